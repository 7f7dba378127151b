// Everything a machine can say about the code: format, lint, types, rooms, dead code, generated files.
import { spawnSync } from 'node:child_process';
import { ensureInstalled, root } from './lib/fresh.mjs';

ensureInstalled();
const steps = [
  ['format and lint', 'biome', ['check', '--error-on-warnings', '.']],
  ['types', 'tsc', ['-p', '.']],
  ['types of scripts for readers', 'tsc', ['-p', 'src/render/site/reader']],
  ['types of the worker for readers', 'tsc', ['-p', 'src/render/site/worker']],
  ['rooms', 'depcruise', ['src', '--config', '.dependency-cruiser.mjs']],
  ['dead code', 'knip', []],
  ['generated list of checks', process.execPath, ['scripts/generateChecks.mjs', '--check']],
  ['documentation made from the program', process.execPath, ['scripts/generateDocs.mjs', '--check']],
];
let failed = 0;
for (const [title, command, args] of steps) {
  const result = spawnSync(command, args, {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, PATH: `${root}/node_modules/.bin:${process.env.PATH}` },
  });
  if (result.status === 0) {
    process.stdout.write(`${title}: good\n`);
  } else {
    failed++;
    process.stdout.write(
      `${title}: not good\n${result.stdout ?? ''}${result.stderr ?? ''}${result.error?.message ?? ''}\n`,
    );
  }
}
process.exitCode = failed === 0 ? 0 : 1;
