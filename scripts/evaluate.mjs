// Measures how well the tool finds what it promises to find: `npm run evaluate -- NAME [OPTIONS]`.
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { ensureInstalled, root } from './lib/fresh.mjs';

ensureInstalled();
const folder = path.join(root, 'scripts/evaluate');
const [name = '', ...args] = process.argv.slice(2);
const file = path.join(folder, `${name}.mjs`);
if (!/^[a-z]+$/.test(name) || !existsSync(file)) {
  const known = readdirSync(folder).map((one) => one.replace('.mjs', ''));
  process.stderr.write(`Name what to evaluate: ${known.join(', ')}.\n`);
  process.exit(2);
}
const { evaluate } = await import(file);
process.exitCode = await evaluate(args);
