import { spawnSync } from 'node:child_process';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '../..');

/** Runs the built program as a user would. */
export function runProgram(
  args: readonly string[],
  options: { readonly preload?: string; readonly cache?: string } = {},
) {
  const preload = options.preload === undefined ? [] : ['--import', options.preload];
  const result = spawnSync(process.execPath, [...preload, path.join(root, 'bin/twicebuilt.mjs'), ...args], {
    encoding: 'utf8',
    cwd: root,
    maxBuffer: 200_000_000,
    env: { ...process.env, ...(options.cache === undefined ? {} : { XDG_CACHE_HOME: options.cache }) },
  });
  return { status: result.status, stdout: result.stdout, stderr: result.stderr };
}
