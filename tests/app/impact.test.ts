import { describe, expect, it } from 'vitest';
import { adopt } from '#app/adopt.ts';
import { check } from '#app/check.ts';
import { impact, openItems } from '#app/impact.ts';
import type { World } from '#app/ports.ts';
import { tinyPng } from '#checks/tinyPng.ts';
import { memoryCache } from '#outside/cache/memoryCache.ts';
import { memoryFolder } from '#outside/files/memoryFolder.ts';
import { openWorld } from '#outside/openWorld.ts';

const files = {
  'guide.md': `# Porch bell

R1 keeps the sounder quiet.

## Fit the resistor

- Parts: R1

Push R1 through the board.

![R1 lies flat on the board](photos/one.png)

## Fit the lead

- Parts: LS1
- Connects: U1.D5 – R1.1, R1.2 – LS1.1

Solder the lead.

## Load the code

- Parts: U1
- Code: bell.ino

Load it.

## Close the lid

Snap it shut.
`,
  'parts.csv':
    'Reference,Quantity,Description,Value\nR1,1,Resistor,100 Ω\nLS1,1,Sounder,\nU1,1,Uno-style board ATmega328P,\n',
  'wiring.csv': 'from,to\nU1.D5,R1.1\nR1.2,LS1.1\nLS1.2,U1.GND\n',
  'bell.ino':
    'const int BELL_PIN = 5;\nvoid setup() { pinMode(BELL_PIN, OUTPUT); }\nvoid loop() { digitalWrite(BELL_PIN, HIGH); }\n',
  'photos/one.png': tinyPng,
};

/** A bench on which time passes from look to look. */
async function bench() {
  const folder = memoryFolder(files);
  const cache = memoryCache();
  let now = '2026-03-01T18:00:00Z';
  const world: World = { ...openWorld(), openCache: async () => cache, now: () => now };
  await adopt(folder, world);
  return {
    folder,
    world,
    async edit(day: string, changes: Readonly<Record<string, readonly [string, string]>>) {
      now = `${day}T18:00:00Z`;
      for (const [file, [from, to]] of Object.entries(changes)) {
        const text = new TextDecoder().decode(await folder.read(file));
        if (!text.includes(from)) throw new Error(`${file} does not hold ${from}`);
        await folder.write(file, new TextEncoder().encode(text.replace(from, to)));
      }
      await check(folder, world);
    },
    async list() {
      const report = await impact(folder, world);
      return report.impact.map(({ changed, items }) => [
        changed,
        items
          .filter(({ done }) => !done)
          .map(({ kind, place }) => `${kind} ${place.kind === 'text' ? place.quote.slice(0, 30) : place.file}`),
      ]);
    },
  };
}

describe('impact', () => {
  it('is empty as long as nothing has changed since the folder was adopted', async () => {
    const { list, edit } = await bench();
    expect(await list()).toEqual([]);
    await edit('2026-03-02', {});
    expect(await list()).toEqual([]);
  });
  it('lists the steps, captions, texts, wiring rows and code that depend on a changed part', async () => {
    const { list, edit } = await bench();
    await edit('2026-03-02', { 'parts.csv': ['100 Ω', '220 Ω'] });
    expect(await list()).toEqual([
      [
        'part:R1',
        [
          'text Porch bell',
          'step Fit the resistor',
          'step Fit the lead',
          'caption ![R1 lies flat on the board](p',
          'wiring U1.D5,R1.1',
          'wiring R1.2,LS1.1',
        ],
      ],
    ]);
  });
  it('takes what is edited afterwards, or together with the change, from the list', async () => {
    const { list, edit } = await bench();
    await edit('2026-03-02', { 'parts.csv': ['100 Ω', '220 Ω'], 'wiring.csv': ['R1.2,LS1.1', 'LS1.1,R1.2'] });
    await edit('2026-03-03', { 'guide.md': ['Push R1 through', 'Press R1 through'] });
    expect((await list())[0]?.[1]).toEqual([
      'text Porch bell',
      'step Fit the lead',
      'caption ![R1 lies flat on the board](p',
      'wiring U1.D5,R1.1',
    ]);
  });
  it('keeps an item until it is ticked off, and asks again after another change', async () => {
    const { folder, world, list, edit } = await bench();
    await edit('2026-03-02', { 'parts.csv': ['100 Ω', '220 Ω'] });
    const { ticked } = await impact(folder, world, ['1', '3']);
    expect(ticked.map(({ kind }) => kind)).toEqual(['text', 'step']);
    expect((await list())[0]?.[1]).toHaveLength(4);
    const all = await impact(folder, world, 'all');
    expect(openItems(all.impact)).toEqual([]);
    await edit('2026-03-05', { 'parts.csv': ['220 Ω', '330 Ω'] });
    expect((await list())[0]?.[1]).toHaveLength(6);
  });
  it('follows wires into code and into the steps that make them', async () => {
    const { list, edit } = await bench();
    await edit('2026-03-02', { 'wiring.csv': ['U1.D5,R1.1', 'U1.D5,R1.1 '] });
    expect(await list()).toEqual([]);
    await edit('2026-03-03', { 'wiring.csv': ['from,to\nU1.D5,R1.1', 'from,to,colour\nU1.D5,R1.1,red'] });
    expect(await list()).toEqual([['connection:R1.1~U1.D5', ['step Fit the lead', 'code 5']]]);
  });
  it('follows code to the step that loads it, and a part that is gone to what still speaks of it', async () => {
    const { list, edit } = await bench();
    await edit('2026-03-02', { 'bell.ino': ['HIGH', 'LOW'] });
    expect(await list()).toEqual([['code:bell.ino', ['step Load the code']]]);
    await edit('2026-03-03', { 'parts.csv': ['LS1,1,Sounder,\n', ''], 'bell.ino': ['LOW', 'HIGH'] });
    expect(await list()).toContainEqual([
      'part:LS1',
      ['step Fit the lead', 'wiring R1.2,LS1.1', 'wiring LS1.2,U1.GND'],
    ]);
  });
  it('does not take a list that could not be read for a while for a change', async () => {
    const { list, edit } = await bench();
    await edit('2026-03-02', { 'parts.csv': ['LS1,1,Sounder,\n', ''] });
    await edit('2026-03-03', { 'parts.csv': ['U1,1', 'LS1,1,Sounder,\nU1,1'] });
    expect(await list()).toEqual([]);
  });
  it('says what the checks find about the change now', async () => {
    const { folder, world, edit } = await bench();
    await edit('2026-03-02', { 'guide.md': ['keeps the sounder quiet', 'of 100 Ω keeps the sounder quiet'] });
    await edit('2026-03-03', { 'parts.csv': ['100 Ω', '220 Ω'] });
    const report = await impact(folder, world);
    expect(report.impact.map(({ findings }) => findings.map((finding) => finding.check))).toEqual([['value-differs']]);
  });
  it('needs a folder that was adopted, and a number that is on the list', async () => {
    const { folder, world, edit } = await bench();
    await expect(impact(folder, world, ['1'])).rejects.toThrow(/Nothing is left to look at/);
    await edit('2026-03-02', { 'parts.csv': ['100 Ω', '220 Ω'] });
    await expect(impact(folder, world, ['99'])).rejects.toThrow(/number from the list/);
    await expect(impact(memoryFolder(files), world)).rejects.toThrow(/adopted/);
  });
});
