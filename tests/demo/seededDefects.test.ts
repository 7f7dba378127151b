import { afterEach, describe, expect, it } from 'vitest';
import { check } from '#app/check.ts';
import type { Finding } from '#core/finding.ts';
import { openWorld } from '#outside/openWorld.ts';
import { copyDemo, type DemoCopy, demoFolder } from './demoCopy.ts';

interface Seed {
  readonly title: string;
  readonly plant: (demo: DemoCopy) => Promise<void>;
  readonly check: string;
  /** The file, and words of the line at which it must be found; no words where a whole file is meant. */
  readonly at: { readonly file: string; readonly words?: string };
}

const seeds: readonly Seed[] = [
  {
    title: 'the parts list is gone',
    plant: async (demo) => {
      await demo.remove('parts.csv');
    },
    check: 'parts-list-missing',
    at: { file: 'guide.md', words: '# Tide lamp' },
  },
  {
    title: 'the parts list is a stub',
    plant: (demo) => demo.write('parts.csv', 'Reference,Quantity,Description\n,,insert parts here\n'),
    check: 'parts-list-missing',
    at: { file: 'parts.csv', words: 'insert parts here' },
  },
  {
    title: 'a step takes a resistor that nobody listed',
    plant: (demo) => demo.swap('guide.md', '- Parts: PB1, R1–R3', '- Parts: PB1, R1–R3, R9'),
    check: 'part-not-listed',
    at: { file: 'guide.md', words: 'R1–R3, R9' },
  },
  {
    title: 'the wiring joins a part that nobody listed',
    plant: (demo) => demo.swap('wiring.csv', 'R2.1,U1.3V3', 'R2.1,D7.A,3V3,orange,26 AWG,5 cm,\nD7.K,U1.3V3'),
    check: 'part-not-listed',
    at: { file: 'wiring.csv', words: 'D7.A' },
  },
  {
    title: 'the quantity column disagrees with the references beside it',
    plant: (demo) => demo.swap('parts.csv', '"R2, R3",2,', '"R2, R3",1,'),
    check: 'part-count-differs',
    at: { file: 'parts.csv', words: '"R2, R3",1' },
  },
  {
    title: 'a step takes more wire than there is',
    plant: (demo) => demo.swap('guide.md', 'W2 15 cm, W3 15 cm', 'W2 15 cm, W3 95 cm'),
    check: 'part-count-differs',
    at: { file: 'guide.md', words: 'W3 95 cm' },
  },
  {
    title: 'a caption gives another value than the parts list',
    plant: (demo) => demo.swap('guide.md', '"R1 is 330 Ω: orange', '"R1 is 470 Ω: orange'),
    check: 'value-differs',
    at: { file: 'guide.md', words: 'R1 is 470 Ω' },
  },
  {
    title: 'the parts list gives another value than the text',
    plant: (demo) => demo.swap('parts.csv', ',330 Ω,', ',680 Ω,'),
    check: 'value-differs',
    at: { file: 'parts.csv', words: '680 Ω' },
  },
  {
    title: 'the code drives the ring on another pin than the wiring',
    plant: (demo) => demo.swap('firmware/pins.h', 'PIN_RING = 16;', 'PIN_RING = 17;'),
    check: 'pin-differs',
    at: { file: 'firmware/pins.h', words: 'PIN_RING = 17' },
  },
  {
    title: 'a step joins another pin than the wiring',
    plant: (demo) => demo.swap('guide.md', 'U1.IO16 –', 'U1.IO17 –'),
    check: 'pin-differs',
    at: { file: 'guide.md', words: 'U1.IO17 –' },
  },
  {
    title: 'the code gives two jobs to one pin',
    plant: (demo) => demo.swap('firmware/pins.h', 'PIN_BUTTON = 27;', 'PIN_BUTTON = 26;'),
    check: 'pin-used-twice',
    at: { file: 'firmware/pins.h', words: 'PIN_BUTTON = 26' },
  },
  {
    title: 'the wiring brings two nets to one pin',
    plant: (demo) => demo.swap('wiring.csv', 'ENC1.S1,U1.IO27', 'ENC1.S1,U1.IO26'),
    check: 'pin-used-twice',
    at: { file: 'wiring.csv', words: 'ENC1.S1,U1.IO26' },
  },
  {
    title: 'the code asks for a library that nothing names',
    plant: (demo) =>
      demo.swap('firmware/main.cpp', '#include <FastLED.h>', '#include <FastLED.h>\n#include <OneWire.h>'),
    check: 'library-not-named',
    at: { file: 'firmware/main.cpp', words: '#include <OneWire.h>' },
  },
  {
    title: 'a library is named neither in the manifest nor in the guide any more',
    plant: async (demo) => {
      await demo.swap('firmware/platformio.ini', '  ESP32Encoder@0.11.7\n', '');
      await demo.swap(
        'guide.md',
        'both libraries, FastLED 3.9.4 and ESP32Encoder 0.11.7,',
        'the library FastLED 3.9.4',
      );
    },
    check: 'library-not-named',
    at: { file: 'firmware/main.cpp', words: '#include <ESP32Encoder.h>' },
  },
  {
    title: 'a password stands in the example of the secrets',
    plant: (demo) => demo.swap('firmware/secrets.example.h', '"your-password"', '"kelp-and-lantern-41"'),
    check: 'secret-in-files',
    at: { file: 'firmware/secrets.example.h', words: 'WIFI_PASSWORD' },
  },
  {
    title: 'the code joins the network with its password written out',
    plant: (demo) =>
      demo.swap(
        'firmware/main.cpp',
        'WiFi.begin(WIFI_NAME, WIFI_PASSWORD)',
        'WiFi.begin("Quayside", "kelp-and-lantern-41")',
      ),
    check: 'secret-in-files',
    at: { file: 'firmware/main.cpp', words: 'WiFi.begin(' },
  },
  {
    title: 'a sub-assembly is used before the step that makes it',
    plant: async (demo) => {
      await demo.swap('guide.md', '- Makes: ring with its plate\n', '');
      await demo.swap('guide.md', '- Parts: MP3\n', '- Parts: MP3\n- Makes: ring with its plate\n');
    },
    check: 'used-before-made',
    at: { file: 'guide.md', words: 'wired board, ring with its plate' },
  },
  {
    title: 'a wire is soldered to a part that a later step brings',
    plant: (demo) => demo.swap('guide.md', '- Connects: F1.2 – C1.+,', '- Connects: LED1.5V – C1.+, F1.2 – C1.+,'),
    check: 'used-before-made',
    at: { file: 'guide.md', words: 'LED1.5V – C1.+, F1.2' },
  },
  {
    title: 'a picture is spelled in another case than its file',
    plant: (demo) => demo.swap('guide.md', 'photos/IMG_2043.jpg', 'photos/IMG_2043.JPG'),
    check: 'picture-missing',
    at: { file: 'guide.md', words: 'photos/IMG_2043.JPG' },
  },
  {
    title: 'the file of a picture is gone',
    plant: (demo) => demo.remove('photos/IMG_2069.jpg'),
    check: 'picture-missing',
    at: { file: 'guide.md', words: 'photos/IMG_2069.jpg' },
  },
  {
    title: 'a note to oneself is left in the guide',
    plant: (demo) => demo.swap('guide.md', 'Push KN1 on to the shaft.', 'Push KN1 on to the shaft. TODO say how far'),
    check: 'placeholder-left',
    at: { file: 'guide.md', words: 'TODO say how far' },
  },
  {
    title: 'a price is still to be decided in the parts list',
    plant: (demo) => demo.swap('parts.csv', 'Corner holes 2.3 mm', 'TBD'),
    check: 'placeholder-left',
    at: { file: 'parts.csv', words: 'PF-7050' },
  },
];

let demo: DemoCopy | null = null;
afterEach(async () => demo?.discard());

describe('the demo', () => {
  it('is clean: buildable, and nothing found', async () => {
    const { findings, verdict, ran } = await judged(demoFolder);
    expect(findings.map(({ id, message }) => `${id}: ${message}`)).toEqual([]);
    expect(verdict).toBe('buildable');
    expect(ran.filter(({ outcome }) => outcome === 'failed' || outcome === 'cannot-tell')).toEqual([]);
  });

  it.each(seeds.map((seed) => [seed.title, seed] as const))(
    'halts or slows a builder at the right line when %s',
    async (_, seed) => {
      demo = await copyDemo();
      await seed.plant(demo);
      const { findings } = await judged(demo.root);
      const places = findings.filter((finding) => finding.check === seed.check).flatMap(linesOf);
      const wanted =
        seed.at.words === undefined
          ? `${seed.at.file}`
          : `${seed.at.file}:${lineWith(await demo.read(seed.at.file), seed.at.words)}`;
      expect(places).toContain(wanted);
    },
  );
});

async function judged(root: string) {
  const world = openWorld({ now: () => '2026-11-25T12:00:00Z' });
  return check(await world.openFolder(root), world);
}

function linesOf(finding: Finding): string[] {
  return finding.sides.map(({ place }) => (place.kind === 'text' ? `${place.file}:${place.line}` : place.file));
}

function lineWith(text: string, words: string): number {
  const line = text.split('\n').findIndex((candidate) => candidate.includes(words));
  if (line < 0) throw new Error(`“${words}” is not in the file.`);
  return line + 1;
}
