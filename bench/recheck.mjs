// What looking again costs after one step was edited, against looking for the first time, within one process.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { bundleForNode } from '../scripts/lib/bundleForNode.mjs';
import { root } from '../scripts/lib/fresh.mjs';
import { writeBigBuild } from './bigBuild.mjs';

const size = { steps: 200, parts: 300, connections: 400 };

/** Prints seconds of the first look at a build, of the first look at another one like it, and of looking again. */
export async function bench() {
  const folder = mkdtempSync(path.join(tmpdir(), 'twicebuilt-recheck-'));
  try {
    const into = path.join(root, 'dist/bench');
    await bundleForNode({ recheck: 'bench/recheckRun.ts', pictureWorker: 'src/outside/pictureWorker.ts' }, into);
    const [first, second] = ['row', 'strip'].map((word) => {
      writeBigBuild(path.join(folder, word), { ...size, word });
      return path.join(folder, word);
    });
    const { stdout, stderr, status } = spawnSync(process.execPath, [path.join(into, 'recheck.js'), first, second], {
      encoding: 'utf8',
      env: { ...process.env, XDG_CACHE_HOME: path.join(folder, 'cache') },
    });
    if (status !== 0) throw new Error(stderr);
    const { whole, other, early, later } = JSON.parse(stdout);
    const shares = (again) =>
      `${(again / whole).toFixed(3)} of the first look, ${(again / other).toFixed(3)} of that at another build`;
    process.stdout.write(
      [
        `Build: ${size.steps} steps, ${size.parts} parts, ${size.connections} connections; seconds of processor time.`,
        `first look in a process        ${whole.toFixed(3)} s`,
        `first look at another build    ${other.toFixed(3)} s`,
        `again, after one edited step   ${early.toFixed(3)} s   ${shares(early)}`,
        `the same after eleven edits    ${later.toFixed(3)} s   ${shares(later)}`,
        '',
      ].join('\n'),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
