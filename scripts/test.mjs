// Everything that decides whether a change may land. With --long: the rest as well.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ensureBuilt, ensureInstalled, root } from './lib/fresh.mjs';
import { ensurePrograms } from './lib/programs.mjs';

const long = process.argv.includes('--long');
ensureInstalled();
const leftOut = ensurePrograms(long);
ensureBuilt();

const report = path.join(mkdtempSync(path.join(tmpdir(), 'twicebuilt-test-')), 'report.json');
const steps = [
  ['What machines can say about the code', process.execPath, ['scripts/check.mjs']],
  [
    'Tests',
    vitest(),
    [
      'run',
      '--reporter=default',
      '--reporter=json',
      `--outputFile=${report}`,
      ...(long ? ['--config', 'vitest.long.config.ts'] : []),
    ],
  ],
];
let failed = false;
for (const [title, command, args] of steps) {
  process.stdout.write(`\n${title}\n`);
  const { status } = spawnSync(command, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
  if (status !== 0) failed = true;
}
for (const { program, why } of leftOut) process.stdout.write(`Left out: what needs ${program} (${why}).\n`);
if (process.env.CI && leftOut.length > 0) failed = true;
process.stdout.write(`${countsOf(report)}\n`);
rmSync(path.dirname(report), { recursive: true, force: true });
process.exitCode = failed ? 1 : 0;

function vitest() {
  return path.join(root, 'node_modules/.bin/vitest');
}

function countsOf(file) {
  try {
    const { numPassedTests, numFailedTests, numPendingTests } = JSON.parse(readFileSync(file, 'utf8'));
    return `${numPassedTests} passed, ${numFailedTests} failed, ${numPendingTests} skipped`;
  } catch {
    return 'No test report was written.';
  }
}
