// Faults planted in builds that are right: how many are found at the place where they show, and what else is raised.
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../lib/bundleForNode.mjs';
import { root } from '../lib/fresh.mjs';

export async function evaluate(args) {
  const { values } = parseArgs({
    args,
    options: { build: { type: 'string' }, operator: { type: 'string' }, json: { type: 'boolean', default: false } },
  });
  const into = path.join(root, 'dist/evaluate');
  await bundleForNode({ mutants: 'tests/mutation/evaluateMutants.ts' }, into);
  const { evaluateChosen, tableOf, documentOf } = await import(pathToFileURL(path.join(into, 'mutants.js')).href);
  const outcomes = await evaluateChosen({ build: values.build, operator: values.operator });
  if (outcomes.length === 0) {
    process.stderr.write('No mutant is of that build and operator.\n');
    return 2;
  }
  process.stdout.write(values.json ? `${JSON.stringify(documentOf(outcomes), null, 2)}\n` : tableOf(outcomes));
  return 0;
}
