// Brings a checkout up to date: installs when the lock file says otherwise, builds when the sources do.
// Plain Node without dependencies, since nothing may be installed yet.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');

const lockStamp = path.join(root, 'node_modules/.installed-lock');
const buildStamp = path.join(root, 'dist/.built-from');

/** Installs the packages of the lock file unless exactly those are there. */
export function ensureInstalled() {
  const lock = digestOfFiles([path.join(root, 'package-lock.json')]);
  if (readStamp(lockStamp) === lock) return;
  process.stderr.write('Installing packages …\n');
  run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  writeFileSync(lockStamp, lock);
}

/** Builds `dist/` unless it was built from exactly these sources. */
export function ensureBuilt() {
  const inputs = digestOfFiles([
    ...filesBelow(path.join(root, 'src')),
    path.join(root, 'package.json'),
    path.join(root, 'package-lock.json'),
    path.join(root, 'scripts/build.mjs'),
    path.join(root, 'scripts/lib/bundleForNode.mjs'),
    path.join(root, 'scripts/lib/readerScripts.mjs'),
  ]);
  if (readStamp(buildStamp) === inputs) return;
  process.stderr.write('Building …\n');
  run(process.execPath, [path.join(root, 'scripts/build.mjs')]);
  mkdirSync(path.dirname(buildStamp), { recursive: true });
  writeFileSync(buildStamp, inputs);
}

/** Runs a program in the checkout with its output on stderr; ends this process when it fails. */
export function run(command, args, options = {}) {
  const result = spawnSync(command, args, { cwd: root, stdio: ['ignore', 2, 2], ...options });
  if (result.error) {
    process.stderr.write(`Cannot start ${command}: ${result.error.message}\n`);
    process.exit(2);
  }
  if (result.status !== 0) {
    process.stderr.write(`${command} ${args.join(' ')} ended with ${result.status ?? result.signal}.\n`);
    process.exit(2);
  }
}

function digestOfFiles(files) {
  const hash = createHash('sha256');
  for (const file of files) hash.update(path.relative(root, file)).update('\0').update(readFileSync(file)).update('\0');
  return hash.digest('hex');
}

function filesBelow(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.endsWith('.test.ts'))
    .map((entry) => path.join(entry.parentPath, entry.name))
    .sort();
}

function readStamp(file) {
  return existsSync(file) ? readFileSync(file, 'utf8') : null;
}
