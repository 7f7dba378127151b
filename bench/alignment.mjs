// How well pictures are laid over one another, compared and grouped: boards made in code, and the photos of the demo.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { bundleForNode } from '../scripts/lib/bundleForNode.mjs';
import { root } from '../scripts/lib/fresh.mjs';

/** Prints errors of alignment, rings that are found and false, groups, millimetres and times. */
export async function bench() {
  const into = path.join(root, 'dist/bench');
  await bundleForNode({ alignment: 'bench/alignmentRun.ts' }, into);
  const demo = path.join(root, 'demo');
  const { status } = spawnSync(process.execPath, [path.join(into, 'alignment.js'), demo], { stdio: 'inherit' });
  if (status !== 0) throw new Error(`The benchmark ended with status ${status}.`);
}
