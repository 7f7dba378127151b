// How well the subject and the board are found, on rendered photos and drawn scenes that nothing was fitted on.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { bundleForNode } from '../scripts/lib/bundleForNode.mjs';
import { root } from '../scripts/lib/fresh.mjs';

/** Prints figures; SUBJECT_LABELS names a file of labelled pictures to be measured too, as bench/fitSubject.mjs reads it. */
export async function bench() {
  const into = path.join(root, 'dist/bench');
  await bundleForNode({ measureSubject: './bench/subject/measureRun.ts' }, into);
  const labels = process.env.SUBJECT_LABELS;
  const { status } = spawnSync(
    process.execPath,
    [path.join(into, 'measureSubject.js'), root, ...(labels === undefined ? [] : [labels])],
    { stdio: 'inherit' },
  );
  if (status !== 0) throw new Error('The subject was not measured.');
}
