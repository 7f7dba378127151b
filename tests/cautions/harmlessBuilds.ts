/** A small invented build that only sounds dangerous. */
export interface HarmlessBuild {
  readonly title: string;
  readonly guide: string;
  readonly parts?: readonly string[];
  readonly tools?: readonly string[];
  readonly wiring?: readonly string[];
  readonly settings?: string;
}

const push = '## Fit the lamp\n\n- Parts: D1\n- Power: off\n\nPush D1 into the breadboard.\n';

export const harmlessBuilds: readonly HarmlessBuild[] = [
  { title: 'no soldering needed', guide: `No soldering needed.\n\n${push}` },
  { title: 'a board that comes soldered', guide: `The headers come soldered. Use a solderless breadboard.\n\n${push}` },
  { title: 'battery-free', guide: `This sensor is battery-free and needs no LiPo.\n\n${push}` },
  {
    title: 'a bought adapter',
    guide: `A mains-powered adapter with 5 V USB output feeds it.\n\n${push}`,
    parts: ['PS1,1,"USB power adapter, 230 V mains to 5 V 2 A, isolated"'],
    settings: 'supply: 5 V from a plug-in mains adapter\n',
  },
  { title: 'alkaline and NiMH cells', guide: push, parts: ['BT1,3,"AA cell, NiMH or alkaline"'] },
  { title: 'acrylic cut by a shop', guide: `Have the panel laser-cut from acrylic by a shop.\n\n${push}` },
  { title: 'a fire drill', guide: `It rings at every fire drill.\n\n${push}` },
  {
    title: 'indicator lights',
    guide: push,
    parts: ['D2,1,"Red indicator LED, 3 mm, 20 mA"', 'D3,1,"Power LED, green"'],
  },
  {
    title: 'blade connectors and a knife switch',
    guide: push,
    parts: ['J1,2,"Blade connector 6.3 mm"', 'SW1,1,"Knife switch"'],
  },
  { title: 'glue logic', guide: `A little glue logic joins the two.\n\n${push}` },
  {
    title: 'a motor driver without a motor',
    guide: push,
    parts: ['U1,1,"Motor driver chip, dual"', 'U2,1,"Fan-out buffer"'],
  },
  { title: 'a small capacitor with a high rating', guide: push, parts: ['C1,1,"Ceramic capacitor, 10 nF, 630 V"'] },
  {
    title: 'a relay that is rated for more',
    guide: push,
    parts: ['K1,1,"Relay, 5 V coil, contacts rated 250 V AC 10 A"'],
  },
  {
    title: 'a distance sensor with a laser',
    guide: push,
    parts: ['U1,1,"Time-of-flight sensor, laser ranging, class 1"'],
  },
  { title: 'a camera for USB', guide: push, parts: ['U1,1,"USB camera, UVC video"'] },
  { title: 'a buzzer of a telephone', guide: push, parts: ['M1,1,"Vibration motor, coin form, 3 V"'] },
  { title: 'a board with a lithium connector', guide: push, parts: ['U1,1,"Development board with LiPo connector"'] },
  {
    title: 'magnet wire and a reed switch',
    guide: push,
    parts: ['L1,1,"Coil of magnet wire"', 'SW1,1,"Reed switch, magnetic"'],
  },
  {
    title: 'words about hum and frequency',
    guide: `The filter takes out mains hum at 50 Hz. Never open a mains supply.\n\n${push}`,
  },
  {
    title: 'a leaded package and legs of a table',
    guide: `Leaded parts are easier than surface mount ones. Cut the legs of the trousers.\n\n${push}`,
  },
  { title: 'shipping of what is bought', guide: `Shipping cost is 4 EUR; the parcel arrives by post.\n\n${push}` },
  {
    title: 'circuit boards of glass and epoxy',
    guide: push,
    parts: ['PB1,1,"Printed circuit board, FR-4 glass epoxy"', 'RT1,1,"Thermistor, epoxy coated"'],
  },
  { title: 'blinking twice a second', guide: `${push}\nThe lamp flashes 2 times a second.\n` },
  {
    title: 'holders for cells',
    guide: push,
    parts: ['XB1,1,"Holder for one 18650 cell, with wires"', 'XB2,1,"Coin cell holder, CR2032"'],
  },
  { title: 'a gland that mains could pass', guide: push, parts: ['MP1,1,"Cable gland M16, for mains cable"'] },
  { title: 'a lithium cell among others that do', guide: push, parts: ['BT1,3,"AA cell, alkaline or lithium cell"'] },
  {
    title: 'wearing glasses and a fan of music',
    guide: `Any fan of music will like it. Notice the lighter colour of the second wire.\n\n${push}`,
  },
];
