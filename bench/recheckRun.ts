// Runs in a process of its own: checks two builds, then the first again and again with one step edited each time.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { check } from '#app/check.ts';
import { openWorld } from '#outside/openWorld.ts';

/** Edits while the process still warms up, and after that: a desk stays open. */
const times = { early: 11, later: 21 };
const [first = '', second = ''] = process.argv.slice(2);
const world = openWorld();

const whole = await seconds(first);
const other = await seconds(second);
const again: number[] = [];
for (let time = 0; time < times.early + times.later; time++) {
  edit(path.join(first, 'guide.md'), time);
  again.push(await seconds(first));
}
const early = median(again.slice(0, times.early));
const later = median(again.slice(times.early));
process.stdout.write(JSON.stringify({ whole, other, early, later }));
process.exit(0);

/** Processor seconds of one check, those of helping threads included. */
async function seconds(folder: string): Promise<number> {
  const before = process.cpuUsage();
  const { verdict } = await check(await world.openFolder(folder), world);
  const { user, system } = process.cpuUsage(before);
  if (verdict !== 'buildable') throw new Error(`expected the build to be buildable, found ${verdict}`);
  return (user + system) / 1e6;
}

function median(numbers: readonly number[]): number | undefined {
  return numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];
}

/** Another step each time, and one more word in it. */
function edit(file: string, time: number): void {
  const text = readFileSync(file, 'utf8');
  const words = new RegExp(`Look at each joint of row ${((time * 17) % 200) + 1} `);
  writeFileSync(
    file,
    text.replace(words, (found) => `${found}once more `),
  );
}
