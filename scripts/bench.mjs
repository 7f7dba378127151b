// Runs the benchmarks: all, or those named after `--`.
import { ensureBuilt, ensureInstalled } from './lib/fresh.mjs';

ensureInstalled();
ensureBuilt();
const known = ['spine', 'recheck', 'publish', 'subject', 'pictures', 'alignment'];
const asked = process.argv.slice(2);
const strange = asked.find((name) => !known.includes(name));
if (strange !== undefined) {
  process.stderr.write(`There is no benchmark “${strange}”; there are ${known.join(', ')}.\n`);
  process.exit(2);
}
for (const name of asked.length > 0 ? asked : known) {
  const { bench } = await import(`../bench/${name}.mjs`);
  await bench();
}
