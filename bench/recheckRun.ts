// Runs in a process of its own: checks two builds, then the first again and again with one step edited each time.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { check } from '#app/check.ts';
import { openWorld } from '#outside/openWorld.ts';

const times = 11;
const [first = '', second = ''] = process.argv.slice(2);
const world = openWorld();

const whole = await seconds(first);
const other = await seconds(second);
const again: number[] = [];
for (let time = 0; time < times; time++) {
  edit(path.join(first, 'guide.md'), time);
  again.push(await seconds(first));
}
again.sort((a, b) => a - b);
process.stdout.write(JSON.stringify({ whole, other, again: again[Math.floor(times / 2)] }));
process.exit(0);

/** Processor seconds of one check, those of helping threads included. */
async function seconds(folder: string): Promise<number> {
  const before = process.cpuUsage();
  const { verdict } = await check(await world.openFolder(folder), world);
  const { user, system } = process.cpuUsage(before);
  if (verdict !== 'buildable') throw new Error(`expected the build to be buildable, found ${verdict}`);
  return (user + system) / 1e6;
}

/** Another step each time, and one more word in it. */
function edit(file: string, time: number): void {
  const text = readFileSync(file, 'utf8');
  const words = new RegExp(`Look at each joint of row ${time * 17 + 1} `);
  writeFileSync(
    file,
    text.replace(words, (found) => `${found}once more `),
  );
}
