/** A small invented build with one hazard. `@` in the guide is where its caution stands, or is left out. */
export interface HazardousBuild {
  readonly hazard: string;
  readonly guide: string;
  readonly caution: string;
  readonly parts?: readonly string[];
  readonly tools?: readonly string[];
  readonly wiring?: readonly string[];
  readonly settings?: string;
}

const aired = 'Work at an open window. The iron is hot: never touch its tip.\n\n';

export const hazardousBuilds: readonly HazardousBuild[] = [
  {
    hazard: 'hot-iron',
    tools: ['soldering iron', 'solder, lead-free'],
    guide: '## Fit the lamp\n\n@\n\nWork in a well-ventilated room. Solder D1 to the board.\n',
    caution: '> **Caution:** The iron burns skin. Hold it by its handle.',
  },
  {
    hazard: 'solder-fumes',
    tools: ['soldering iron'],
    guide: '## Fit the lamp\n\n@\n\nThe tip of the iron is hot: keep fingers off. Solder D1 to the board.\n',
    caution: 'Open the window: do not breathe the smoke.',
  },
  {
    hazard: 'lead',
    tools: ['soldering iron', 'solder, 63/37 tin-lead'],
    guide: `## Fit the lamp\n\n@\n\n${aired}Solder D1 to the board with the leaded solder.\n`,
    caution: 'Caution: The solder contains lead, which is poisonous. Wash your hands before you eat.',
  },
  {
    hazard: 'hot-air',
    tools: ['hot-air gun'],
    guide: '## Shrink the tube\n\n- Power: off\n\n@\n\nWarm the tube with the hot-air gun until it is tight.\n',
    caution: '**Caution:** The hot-air gun burns fingers and paper. Point it away from you.',
  },
  {
    hazard: 'open-flame',
    guide: '## Shrink the tube\n\n- Power: off\n\n@\n\nWarm the tube with a lighter until it is tight.\n',
    caution: '**WARNING** A flame sets sleeves on fire. Tie back hair and clear the table.',
  },
  {
    hazard: 'heat-set',
    guide: '## Prepare the lid\n\n@\n\nHeat-set the four inserts.\n',
    caution: '> [!CAUTION]\n> The brass insert stays hot and burns fingers. Let it cool.',
  },
  {
    hazard: 'hot-glue',
    tools: ['glue gun'],
    guide: '## Fix the wire\n\n@\n\nFix the wire with hot glue.\n',
    caution: 'Be careful, the glue is hot and burns skin.',
  },
  {
    hazard: 'heater',
    parts: ['R9,1,"Heating element, silicone, 12 V"'],
    guide: '## Fit the pad\n\n- Parts: R9\n- Power: off\n\n@\n\nLay R9 under the tray.\n',
    caution: '> **Warning:** The heating element can start a fire. Never leave it on alone.',
  },
  {
    hazard: 'superglue',
    guide: '## Close it\n\n@\n\nFix the lid with superglue.\n',
    caution: '**Caution:** Superglue bonds skin and eyes. Keep it off your fingers.',
  },
  {
    hazard: 'epoxy',
    guide: '## Seal it\n\n@\n\nMix the epoxy and pour it into the tray.\n',
    caution: 'Caution: Unset epoxy makes skin allergic. Wear gloves and air the room.',
  },
  {
    hazard: 'solvent',
    guide: '## Clean the board\n\n@\n\nWipe the board with isopropyl alcohol.\n',
    caution: '**Caution:** Alcohol is flammable and burns. Keep flames away from it.',
  },
  {
    hazard: 'paint',
    tools: ['spray paint'],
    guide: '## Colour the lid\n\n- Power: off\n\n@\n\nSpray the lid with black paint.\n',
    caution: 'Wear a mask against paint vapour, and never spray near a flame: breathing paint harms your lungs.',
  },
  {
    hazard: 'etchant',
    guide: '## Make the board\n\n@\n\nLay the board into ferric chloride for ten minutes.\n',
    caution: '**Warning:** The etchant is corrosive and can blind an eye. Wear goggles and gloves.',
  },
  {
    hazard: 'lithium',
    parts: ['BT1,1,"LiPo cell, 3.7 V, 500 mAh, protected"'],
    guide: '## Connect the cell\n\n- Parts: BT1\n- Power: off → on\n\n@\n\nPlug BT1 in.\n',
    caution: '> **Warning:** A lithium cell catches fire when it is shorted or pierced. Keep metal away from it.',
  },
  {
    hazard: 'solder-to-cell',
    parts: ['BT1,1,"Li-ion cell 18650, protected"'],
    tools: ['soldering iron'],
    guide: `## Wire the cell\n\n- Parts: BT1\n- Power: off\n- Warning: Lithium burns. Never short it or pierce it.\n\n@\n\n${aired}Solder the red wire directly to the cell.\n`,
    caution: '> **Warning:** Heat can make a cell burst: never solder to a cell without tabs.',
  },
  {
    hazard: 'coin-cell',
    parts: ['BT1,1,"CR2032"'],
    guide: '## Put the cell in\n\n- Parts: BT1\n- Power: off → on\n\n@\n\nSlide it in, plus side up.\n',
    caution: '- Warning: A swallowed coin cell can kill a child. Keep it out of reach.',
  },
  {
    hazard: 'high-current',
    parts: ['PS1,1,"Power supply, 5 V, 20 A, isolated"'],
    guide: '## Connect the strip\n\n- Parts: PS1\n- Power: off → on\n\n@\n\nJoin plus and minus to the strip.\n',
    caution: '> **Warning:** A short circuit makes wires glow and can start a fire. Check twice before you switch on.',
  },
  {
    hazard: 'battery-post',
    parts: ['BT1,1,"Li-ion cell 18650, protected"'],
    guide:
      '## Connect the cell\n\n- Parts: BT1\n- Warning: A lithium cell can burn. Never short it.\n- Power: off → on\n\nPut it in.\n\n## Send it to a friend\n\n- Power: off\n\n@\n\nPack the lamp in a box and send it by post.\n',
    caution: '> **Warning:** Lithium cells are dangerous goods (UN 3481) and can catch fire. Ask the carrier first.',
  },
  {
    hazard: 'mains',
    parts: ['J1,1,"Mains inlet with fuse, 250 V 10 A"'],
    guide: '## Wire the inlet\n\n- Parts: J1\n- Power: off\n\n@\n\nScrew the brown wire to L.\n',
    caution: '> **Danger:** Mains kills. Let an electrician do this step.',
  },
  {
    hazard: 'high-voltage',
    parts: ['V1,1,"Nixie tube, 170 V"'],
    guide: '## Light the tube\n\n- Parts: V1\n- Power: off → on\n\n@\n\nPut V1 into its socket and switch on.\n',
    caution: '> **Warning:** The voltage gives a fatal shock. Never touch the board while it is on.',
  },
  {
    hazard: 'charged-capacitor',
    parts: ['C1,1,"Film capacitor, 100 µF, 400 V"'],
    settings: 'supply: 350 V DC, inside the box\n',
    guide: '## Fit the bank\n\n- Parts: C1\n- Power: off\n\n@\n\nScrew C1 to the rail.\n',
    caution: '> **Warning:** The capacitor gives a heavy shock. Discharge it through a resistor before you touch it.',
  },
  {
    hazard: 'supercapacitor',
    parts: ['C1,1,"Supercapacitor, 1 F, 5.5 V"'],
    guide: '## Fit the store\n\n- Parts: C1\n- Power: off\n\n@\n\nPush C1 into the socket.\n',
    caution: '> **Caution:** A supercapacitor that is shorted burns fingers. Discharge it first.',
  },
  {
    hazard: 'polarity',
    parts: ['C1,1,"Electrolytic capacitor, 100 µF, 16 V"'],
    guide: '## Fit C1\n\n- Parts: C1\n- Power: off\n\n@\n\nPush C1 into the breadboard.\n',
    caution: 'Mind the polarity of C1.',
  },
  {
    hazard: 'esd',
    parts: ['Q1,1,"N-channel MOSFET, TO-220"'],
    guide: '## Fit Q1\n\n- Parts: Q1\n- Power: off\n\n@\n\nPush Q1 into the breadboard.\n',
    caution: '> **Notice:** Static charge destroys Q1. Touch a grounded part first.',
  },
  {
    hazard: 'strap-and-mains',
    parts: ['J1,1,"Mains inlet with fuse"'],
    guide:
      '## Wire the inlet\n\n- Parts: J1\n- Tools: wrist strap\n- Warning: Mains can kill. Let an electrician wire it.\n- Power: off\n\n@\n\nScrew the brown wire to J1.\n',
    caution: '> **Warning:** Never wear the strap near mains: it can kill you.',
  },
  {
    hazard: 'laser-strong',
    parts: ['LD1,1,"Laser diode module, 405 nm, 200 mW"'],
    guide: '## Fit the laser\n\n- Parts: LD1\n- Power: off → on\n\n@\n\nPush LD1 into its mount.\n',
    caution: '> **Warning:** The laser blinds an eye at once. Wear laser goggles for 405 nm.',
  },
  {
    hazard: 'laser-3r',
    parts: ['LD1,1,"Laser module, red, class 3R"'],
    guide: '## Fit the laser\n\n- Parts: LD1\n- Power: off → on\n\n@\n\nPush LD1 into its mount.\n',
    caution: '> **Caution:** The laser can hurt your eyes. Do not look into the beam.',
  },
  {
    hazard: 'uv-c',
    parts: ['LP1,1,"Germicidal lamp, 254 nm, 4 W"'],
    guide: '## Fit the lamp\n\n- Parts: LP1\n- Power: off → on\n\n@\n\nPush LP1 into its holder.\n',
    caution: '> **Warning:** The ultraviolet light burns eyes and skin. Never look at it; wear a face shield.',
  },
  {
    hazard: 'flicker',
    guide: '## Try it out\n\n- Power: off\n\n@\n\nPress the button: the lamp flashes 12 times a second.\n',
    caution: '**Warning:** Fast flashes can set off a seizure. Tell everybody in the room.',
  },
  {
    hazard: 'cut-leads',
    guide: '## Tidy the board\n\n- Power: off\n\n@\n\nTrim the leads of R1 to 2 mm.\n',
    caution: 'Wear safety glasses: a cut lead flies into an eye.',
  },
  {
    hazard: 'blade',
    tools: ['scalpel'],
    guide: '## Open the track\n\n@\n\nCut the track with a scalpel.\n',
    caution: 'Caution: The scalpel is sharp and cuts deep. Cut away from your hand.',
  },
  {
    hazard: 'needle',
    tools: ['sewing needle'],
    guide: '## Sew the seam\n\n- Tools: sewing needle\n\n@\n\nSew four stitches through the felt.\n',
    caution: '**Caution:** A needle pricks fingers. Sew away from them.',
  },
  {
    hazard: 'drilling',
    guide: '## Open the lid\n\n@\n\nDrill a hole of 8 mm into the lid.\n',
    caution: '**Caution:** Drilling throws chips into eyes. Clamp the lid and wear safety glasses.',
  },
  {
    hazard: 'motor',
    parts: ['M1,1,"DC motor, 12 V"'],
    guide: '## Fit the drive\n\n- Parts: M1\n- Power: off → on\n\n@\n\nScrew M1 to the frame.\n',
    caution: '> **Caution:** The motor starts by itself and catches hair. Keep clear of it.',
  },
  {
    hazard: 'propeller',
    parts: ['MP1,1,"Propeller, 5 inch"'],
    guide: '## Fit the propeller\n\n- Parts: MP1\n- Power: off\n\n@\n\nPush it on to the shaft.\n',
    caution:
      '> **Warning:** A propeller cuts fingers and eyes. Keep it off until the last test, and wear safety glasses.',
  },
  {
    hazard: 'magnets',
    parts: ['MP1,4,"Neodymium magnet, 6 × 2 mm"'],
    guide: '## Fit the magnets\n\n- Parts: MP1\n- Power: off\n\n@\n\nPress the four into the lid.\n',
    caution: '> **Warning:** Swallowed magnets can kill a child. Count them afterwards.',
  },
  {
    hazard: 'laser-cutter',
    tools: ['laser cutter'],
    guide: '## Make the panel\n\n@\n\nLaser-cut the panel from 3 mm plywood.\n',
    caution: '**Warning:** A laser cutter can set the room on fire. Stay beside it.',
  },
  {
    hazard: 'printer',
    guide: '## Make the case\n\n@\n\nPrint both halves in PLA with 20 % infill.\n',
    caution: 'Never leave the printer alone: its hot nozzle can start a fire.',
  },
  {
    hazard: 'wearable',
    guide: '## Wear it\n\n- Power: off\n\n@\n\nClose the wristband so that it sits snugly.\n',
    caution: '**Caution:** Sweat and warmth irritate skin. Take it off at night.',
  },
  {
    hazard: 'wet-mains',
    parts: ['J1,1,"Mains inlet with fuse"'],
    guide:
      '## Wire the inlet\n\n- Parts: J1\n- Warning: Mains can kill. Let an electrician wire it.\n- Power: off\n\nScrew the brown wire to J1.\n\n## Put it up\n\n@\n\nHang the box in the garden.\n',
    caution: '> **Warning:** Rain and mains together kill. Use a residual-current device.',
  },
];
