// Fits the trees of findSubject anew. Usage: node bench/fitSubject.mjs [LABELS.json]
// LABELS.json adds pictures of one's own: [{"name", "file", "box": [left, top, width, height], "scene"}], box as shares.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundleForNode } from '../scripts/lib/bundleForNode.mjs';
import { root } from '../scripts/lib/fresh.mjs';

/** Writes src/imaging/subject/subjectForests.json. */
export async function fitSubject(labels) {
  const into = path.join(root, 'dist/bench');
  await bundleForNode({ fitSubject: './bench/subject/fitRun.ts' }, into);
  const output = path.join(root, 'src/imaging/subject/subjectForests.json');
  const { status } = spawnSync(process.execPath, [path.join(into, 'fitSubject.js'), root, output, ...labels], {
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error('The trees were not fitted.');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await fitSubject(process.argv.slice(2));
