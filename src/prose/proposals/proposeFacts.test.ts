import { describe, expect, it } from 'vitest';
import { proposalId } from '#core/proposal.ts';
import { type MadeUp, madeUpBuild } from '../madeUpBuild.ts';
import { readFacts } from '../readFacts.ts';

const lamp = [
  'nano: Arduino Nano, 5 V',
  'display: 0.96 inch OLED display, SSD1306',
  'climate: DHT22 temperature and humidity sensor',
  'bulk: Electrolytic capacitor, radial',
  'pump: Water pump, submersible',
  'tube: Silicone tube 6 mm',
  'm3: M3 × 10 screws',
  'm25: M2.5 × 6 screws',
  'spacers: Brass standoffs M2.5 × 11 mm',
  'lid: Enclosure lid, printed',
  'box: Enclosure box, printed',
  'ties: Zip ties',
  'usb: USB-C cable',
];

function proposed(guide: string, made: MadeUp = {}, atLeast = 0.6): string[] {
  const { proposals } = readFacts(madeUpBuild({ parts: lamp, ...made, guide }));
  return proposals
    .filter(({ confidence, again }) => confidence >= atLeast && !again)
    .map(({ label, about, item }) => `${label} ${about ?? item}`);
}

function parts(sentence: string, made: MadeUp = {}): string[] {
  return proposed(`## Do it\n\n${sentence}\n`, made).flatMap((text) => /^parts part:(.*)/.exec(text)?.[1] ?? []);
}

describe('parts that a step speaks of', () => {
  it.each([
    ['Fit the big cap.', ['bulk']],
    ['Connect the DHT-22.', ['climate']],
    ['Connect the DHT 22.', ['climate']],
    ['Connect the humidity sensor.', ['climate']],
    ['Put the spacers on.', ['spacers']],
    ['Hold it with a cable tie.', ['ties']],
    ['Press on the screen.', ['display']],
    ['Slide the silicone tubing on to the pump.', ['pump', 'tube']],
    ['Fasten it with four M3 screws.', ['m3']],
    ['Fasten it with the M2.5 screws.', ['m25']],
    ['Plug in the Nano with a USB-C cable.', ['nano', 'usb']],
  ])('%s', (sentence, expected) => expect(parts(sentence).sort()).toEqual([...expected].sort()));

  it.each([
    'Screw the lot together.',
    'Board the window and lid it well.',
    'Close the cap of the glue bottle.',
    'Fasten it with the screws.',
    'Fasten it with M4 screws.',
    'Pin 1 points left.',
    'Keep the water off.',
    'Cut the long lead.',
    'Use lead-free solder.',
  ])('decides for none in “%s”', (sentence) => expect(parts(sentence)).toEqual([]));

  it('tells resistors of one row from those of another by value, and names neither where both fit', () => {
    const made = { parts: ['low: Resistor 330 Ω', 'high: Resistor 10 kΩ'] };
    expect(parts('Bend the 10k resistor.', made)).toEqual(['high']);
    expect(parts('Bend the 330 ohm resistor.', made)).toEqual(['low']);
    expect(parts('Bend the resistors.', made)).toEqual([]);
    expect(parts('Bend the 47k resistor.', made)).toEqual([]);
  });

  it('takes a verb for a verb and the same word for a part', () => {
    const made = { parts: ['plug: Barrel plug', 'clip: Steel clip', 'wire: Silver wire'] };
    expect(parts('Clip the two halves together and wire them up.', made)).toEqual([]);
    expect(parts('Push the clip over the wire.', made)).toEqual(['clip', 'wire']);
  });

  it('lets a vague word decide only where one listed part is called so', () => {
    expect(parts('Hold the board level.', { parts: ['main: Main board', 'side: Side board'] })).toEqual([]);
    expect(parts('Hold the board level. Solder the board.', { parts: ['main: Main board', 'lamp: Lamp'] })).toEqual([
      'main',
    ]);
  });

  it('takes a word before another noun for a description of that noun', () => {
    expect(parts('Open the battery compartment.', { parts: ['cell: Battery', 'lamp: Lamp'] })).toEqual([]);
    expect(parts('Insert the battery.', { parts: ['cell: Battery', 'lamp: Lamp'] })).toEqual(['cell']);
  });

  it('reads references only where the parts list has them, and not where they are pins or keys', () => {
    const made = { parts: ['R1, R2, R3: resistor', 'D1: diode'] };
    expect(parts('Solder R1 to R3 and C9.', made)).toEqual(['R1']);
    expect(parts('Run a wire to pin D1. Press key D1.', made)).toEqual([]);
    expect(proposed('## Fit R1–R3\n\nSolder them.\n', made)).toContain('parts part:R1');
  });

  it('is less sure of what stays in its bag, and says which words it rests on', () => {
    const { proposals } = readFacts(
      madeUpBuild({ parts: lamp, guide: '## Mount the pump\n\nMake sure the DHT22 is still in its bag.\n' }),
    );
    const [pump, climate] = proposals.filter(({ label }) => label === 'parts');
    expect(pump).toMatchObject({ about: 'part:pump', why: expect.stringContaining('“pump”') });
    expect(pump?.confidence).toBeGreaterThan(0.8);
    expect(climate?.confidence).toBeLessThan(0.6);
  });

  it('proposes nothing that the step declares, and marks as worked on what another step takes up', () => {
    const guide =
      '## Fit the pump\n- Parts: pump\n\nFit the pump and the lid.\n\n## Test the pump\n\nLook at the pump.\n';
    const { proposals } = readFacts(madeUpBuild({ parts: lamp, guide }));
    const of = (step: string) => proposals.filter((one) => one.step === step && one.label === 'parts');
    expect(of('fit-the-pump').map(({ about }) => about)).toEqual(['part:lid']);
    expect(of('test-the-pump')).toMatchObject([{ about: 'part:pump', again: true }]);
  });

  it('makes no proposal again that the maker has declined', () => {
    const build = madeUpBuild({ parts: lamp, guide: '## Mount the pump\n\nPush it in.\n' });
    const [first] = readFacts(build).proposals;
    if (first === undefined) throw new Error('nothing proposed');
    const settings = { ...build.settings, declined: [proposalId(first)] };
    expect(readFacts({ ...build, settings }).proposals.map(proposalId)).not.toContain(proposalId(first));
  });
});

describe('other facts that a step speaks of', () => {
  it('names tools by the maker’s own name, from words and from the work', () => {
    const made = { tools: ['Soldering iron, 350 °C', 'Flush cutters'] };
    const guide = '## Fit it\n\nSolder the leads. Trim the leads with snips. Hold it with tweezers.\n';
    expect(proposed(guide, made).sort()).toEqual([
      'tools tool:Flush cutters',
      'tools tool:Soldering iron, 350 °C',
      'tools tweezers',
    ]);
    expect(proposed('## Fit it\n\nDo not solder yet. File the report.\n', made)).toEqual([]);
  });

  it('joins two pins that the words join, and no two between which is measured', () => {
    const made = { parts: ['U1: board', 'R1: resistor'], wiring: ['U1.D5 R1.1'] };
    expect(proposed('## Wire\n\nSolder a wire from U1.D5 to R1.1.\n', made)).toContain(
      'connects connection:R1.1~U1.D5',
    );
    expect(proposed('## Probe\n\nMeasure between U1.D5 and R1.1.\n', made).join()).not.toContain('connects');
  });

  it('reads code, power and waiting', () => {
    const made = { code: ['firmware/main.cpp: 5'] };
    expect(proposed('## Try it\n\nFlash the firmware. Then switch on.\n', made)).toEqual(
      expect.arrayContaining(['code code:firmware/main.cpp', 'power off → on']),
    );
    expect(proposed('## Glue\n\nLeave it for 20 minutes.\n')).toContain('time 20 min wait');
    expect(proposed('## Glue\n\nThis takes about 5 to 10 minutes.\n')).toContain('time 10 min');
    expect(proposed('## Glue\n\nThe lamp runs for 20 minutes.\n').join()).not.toContain('time');
  });
});
