import { describe, expect, it } from 'vitest';
import { judge } from '#checks/judge.ts';
import { tinyPng } from '#checks/tinyPng.ts';
import type { Finding } from '#core/finding.ts';
import { judgedFrom } from './judgedFrom.ts';
import { lampTexts as texts } from './lampTexts.ts';

/** One fault: words of one file that become others, and the finding that must come of it. */
interface Fault {
  readonly title: string;
  readonly file: string;
  readonly from: string;
  readonly to: string;
  /** A second change to the same file. */
  readonly also?: readonly [from: string, to: string];
  readonly check: string;
  readonly weight: Finding['weight'];
  /** A file and words of the line at which the finding must point. */
  readonly at: readonly [file: string, words: string];
}

const faults: readonly Fault[] = [
  {
    title: 'the ring moved in the code alone, behind a buffer and a resistor',
    file: 'firmware/pins.h',
    from: 'PIN_RING = 16;',
    to: 'PIN_RING = 17;',
    check: 'pin-differs',
    weight: 'halts',
    at: ['firmware/pins.h', 'PIN_RING = 17'],
  },
  {
    title: 'the button moved in the wiring alone',
    file: 'wiring.csv',
    from: 'ENC1.S1,U1.IO27,ENC_SW',
    to: 'ENC1.S1,U1.IO14,ENC_SW',
    check: 'pin-differs',
    weight: 'halts',
    at: ['wiring.csv', 'ENC1.S1,U1.IO14'],
  },
  {
    title: 'a step joins another pin than the wiring',
    file: 'guide.md',
    from: 'U1.IO16 – U2.1A, U2.1Y',
    to: 'U1.IO17 – U2.1A, U2.1Y',
    check: 'pin-differs',
    weight: 'halts',
    at: ['guide.md', 'U1.IO17 – U2.1A, U2.1Y'],
  },
  {
    title: 'the list has another value than the text',
    file: 'parts.csv',
    from: 'carbon film",330 Ω',
    to: 'carbon film",470 Ω',
    check: 'value-differs',
    weight: 'slows',
    at: ['guide.md', 'R1 is 330 Ω'],
  },
  {
    title: 'a capacitor was forgotten in the list',
    file: 'parts.csv',
    from: 'C2,1,',
    to: 'C9,1,',
    check: 'part-not-listed',
    weight: 'halts',
    at: ['guide.md', 'Parts: C1–C4, F1'],
  },
  {
    title: 'one screw too few for its references',
    file: 'parts.csv',
    from: 'MP4–MP10,7,',
    to: 'MP4–MP10,6,',
    check: 'part-count-differs',
    weight: 'halts',
    at: ['parts.csv', 'MP4–MP10,6,'],
  },
  {
    title: 'less wire than the steps cut off',
    file: 'parts.csv',
    from: 'W3,1.4 m,',
    to: 'W3,1.3 m,',
    check: 'part-count-differs',
    weight: 'halts',
    at: ['guide.md', 'Parts: LED1, MP2, W1 15 cm, W2 15 cm, W3 15 cm'],
  },
  {
    title: 'a tie of the buffer that no step makes',
    file: 'guide.md',
    from: 'U2.4A – U2.GND, U2.4OE',
    to: 'U2.4OE',
    check: 'wire-never-made',
    weight: 'halts',
    at: ['wiring.csv', 'U2.4A,U2.GND'],
  },
  {
    title: 'nobody switches off before the ring is soldered',
    file: 'guide.md',
    from: 'ring with its plate\n- Power: off',
    to: 'ring with its plate\n- Power: on',
    check: 'powered-while-working',
    weight: 'halts',
    at: ['guide.md', 'Connects: LED1.IN – R1.2'],
  },
  {
    title: 'the encoder is taken up after it is wired',
    file: 'guide.md',
    from: '- Parts: ENC1, W3 99 cm, HS1 5 cm',
    to: '- Parts: W3 99 cm, HS1 5 cm',
    also: ['MP4–MP10, KN1', 'MP4–MP10, KN1, ENC1'],
    check: 'used-before-made',
    weight: 'halts',
    at: ['guide.md', 'ENC1.A – U1.IO25'],
  },
  {
    title: 'a tool that is in no list',
    file: 'tools.csv',
    from: 'hot-air gun,yes',
    to: 'tea kettle,yes',
    check: 'tool-not-listed',
    weight: 'slows',
    at: ['guide.md', 'Tools: soldering iron, solder, fume extractor, wire strippers, side cutters, ruler, hot-air gun'],
  },
  {
    title: 'a library that neither text nor manifest names',
    file: 'firmware/main.cpp',
    from: '#include <FastLED.h>',
    to: '#include <FastLED.h>\n#include <PubSubClient.h>',
    check: 'library-not-named',
    weight: 'slows',
    at: ['firmware/main.cpp', 'PubSubClient'],
  },
  {
    title: 'the real password went into the example',
    file: 'firmware/secrets.example.h',
    from: '"your-password"',
    to: '"Gr4nite-Otter-77"',
    check: 'secret-in-files',
    weight: 'halts',
    at: ['firmware/secrets.example.h', 'WIFI_PASSWORD'],
  },
  {
    title: 'the step loads a file by its old name',
    file: 'guide.md',
    from: 'Code: firmware/main.cpp → U1',
    to: 'Code: firmware/lamp.cpp → U1',
    check: 'code-not-found',
    weight: 'halts',
    at: ['guide.md', 'firmware/lamp.cpp'],
  },
  {
    title: 'a note to oneself',
    file: 'guide.md',
    from: 'Let the board cool for five minutes.',
    to: 'TODO: how long?',
    check: 'placeholder-left',
    weight: 'slows',
    at: ['guide.md', 'TODO'],
  },
  {
    title: 'a picture in other capitals',
    file: 'guide.md',
    from: 'photos/IMG_2043.jpg',
    to: 'photos/img_2043.jpg',
    check: 'picture-missing',
    weight: 'slows',
    at: ['guide.md', 'img_2043'],
  },
  {
    title: 'volts before anything is switched on',
    file: 'guide.md',
    from: '- Power: on → off\n- Time: 5 min\n- Measure: U1.5V – U1.GND 5.0 V ± 0.25 V\n- Measure: U2.VCC',
    to: '- Power: off\n- Time: 5 min\n- Measure: U1.5V – U1.GND 5.0 V ± 0.25 V\n- Measure: U2.VCC',
    check: 'measured-unpowered',
    weight: 'slows',
    at: ['guide.md', 'Measure: U1.5V – U1.GND 5.0 V'],
  },
];

/** The lamp in memory, with a small picture for each that the guide shows. */
async function findingsOf(changed: ReadonlyMap<string, string> = texts): Promise<Finding[]> {
  const files: Record<string, string | Uint8Array> = Object.fromEntries(changed);
  for (const [, photo] of (texts.get('guide.md') ?? '').matchAll(/\((photos\/[^\s)]+)/g))
    if (photo) files[photo] = tinyPng;
  return judge(await judgedFrom(files), { for: 'publisher' }).findings;
}

describe('the tide lamp', () => {
  it('is found without fault', async () => {
    expect((await findingsOf()).map(({ id, message }) => `${id}: ${message}`)).toEqual([]);
  });
  it.each(faults)(
    'with one fault: $title',
    async ({ file, from, to, also = ['', ''], check, weight, at: [where, words] }) => {
      const text = texts.get(file) ?? '';
      expect(text.split(from)).toHaveLength(2);
      const changed = new Map(texts).set(file, text.replace(from, to).replace(...also));
      const line = (changed.get(where) ?? '').split('\n').findIndex((one) => one.includes(words)) + 1;
      expect(line).toBeGreaterThan(0);
      const findings = await findingsOf(changed);
      const found = findings.filter((finding) => finding.check === check);
      const places = found.flatMap(({ sides }) =>
        sides.map(({ place }) => (place.kind === 'text' ? `${place.file}:${place.line}` : place.file)),
      );
      expect(places).toContain(`${where}:${line}`);
      expect(found.map((finding) => finding.weight)).toContain(weight);
      // One fault may show in several ways, but it does not set off everything.
      expect(new Set(findings.map((finding) => finding.check)).size).toBeLessThanOrEqual(3);
    },
  );
});
