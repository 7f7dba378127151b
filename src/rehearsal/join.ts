import type { Claim } from '#core/claim.ts';
import type { Join } from '#core/step.ts';
import { type Bench, isInPlace, stepThatTakes, wholeOf } from './bench.ts';
import { compareJoin } from './compareJoin.ts';
import { stopIfPowered } from './power.ts';
import type { ScriptStep } from './script.ts';

/** Makes the step's connections, each between parts that are in place, on a circuit without power. */
export function joinParts(bench: Bench, step: ScriptStep): void {
  for (const claim of step.facts.connects) {
    const join = claim.value;
    checkAgainstWiring(bench, step, claim);
    for (const ref of new Set([join.from.ref, join.to.ref])) missPart(bench, step, claim, ref);
    const earlier = bench.made.find((made) => isSameJoin(made.join, join));
    if (earlier !== undefined) {
      bench.stops.push({ kind: 'connection-made-twice', step: step.id, claim, join, before: earlier.step.id });
    }
    stopIfPowered(bench, step, claim, join);
    bench.made.push({ join, step });
    bench.everMade.push(join);
  }
}

/** Two joins of the same ends, or of the same row of the wiring table. */
export function isSameJoin(a: Join, b: Join): boolean {
  return a.id === b.id || (a.connection !== null && a.connection === b.connection);
}

/** What was lifted out again, as a module out of its socket, leaves behind what is wired. */
function missPart(bench: Bench, step: ScriptStep, claim: Claim<Join>, ref: string): void {
  const part = bench.partOfRef(ref);
  const wasThere = bench.lifted.has(ref) || (part !== null && bench.lifted.has(wholeOf(part.id)));
  if (wasThere || isInPlace(bench, ref)) return;
  const arrives = stepThatTakes(bench, ref, bench.script.indexOf(step));
  if (arrives === null) return;
  const join = claim.value;
  bench.stops.push({ kind: 'part-not-in-place', step: step.id, claim, join, part: part?.id ?? ref, arrives });
}

function checkAgainstWiring(bench: Bench, step: ScriptStep, claim: Claim<Join>): void {
  const { connections } = bench.build;
  if (connections.length === 0 || claim.value.connection !== null) return;
  const verdict = compareJoin(claim.value, connections, bench.wiring);
  if (verdict.is !== 'otherwise' && verdict.is !== 'absent') return;
  const nearest = verdict.is === 'otherwise' ? verdict.row.id : null;
  bench.stops.push({ kind: 'connection-not-in-wiring', step: step.id, claim, join: claim.value, nearest });
}
