import type { Connection } from '#core/connection.ts';
import type { Coverage, Stop } from '#core/ledger.ts';
import type { Part } from '#core/part.ts';
import { stockOf } from './amounts.ts';
import type { Bench } from './bench.ts';
import { declaresEnough } from './coverage.ts';
import { netsOf } from './nets.ts';
import { type SpokenParts, spokenParts } from './spokenParts.ts';
import { findTakenAway } from './takenAway.ts';
import { findUnusedAssemblies, findUnusedTools } from './unused.ts';

/** What is left lying on the bench after the last step, where the guide declares enough for that to mean something. */
export function finishSteps(bench: Bench, coverage: Coverage): Stop[] {
  const stops: Stop[] = [...findTakenAway(bench), ...findUnusedAssemblies(bench)];
  if ((coverage.tools ?? 0) >= declaresEnough) stops.push(...findUnusedTools(bench));
  if ((coverage.parts ?? 0) >= declaresEnough) {
    const spoken = spokenParts(bench.build, bench.facts);
    for (const part of bench.build.parts) {
      const left = leftOf(bench, part, spoken);
      const listed = stockOf(part)?.n ?? 0;
      if (left > 0) stops.push({ kind: 'part-left-over', step: null, claim: null, part: part.id, left, listed });
    }
  }
  if ((coverage.connections ?? 0) >= declaresEnough) {
    for (const { id } of neverMade(bench)) {
      stops.push({ kind: 'connection-never-made', step: null, claim: null, connection: id });
    }
  }
  return stops;
}

/**
 * Pieces that no step takes up, joins, or so much as mentions. Of what is cut to length, a rest is no sign of
 * anything; what belongs to an option is nobody's loss; and what came off again was not forgotten.
 */
function leftOf(bench: Bench, part: Part, spoken: SpokenParts): number {
  if (!part.fitted || bench.optionalParts.has(part.id) || spoken.parts.has(part.id)) return 0;
  if (bench.returned.has(part.id)) return 0;
  const stock = stockOf(part);
  const left = bench.bag.left(part);
  if (stock?.unit !== 'pcs') return left === stock?.n ? left : 0;
  const mentioned = part.refs.filter((ref) => spoken.refs.has(ref) && !bench.placed.has(ref));
  return Math.max(0, left - mentioned.length);
}

/** Wires of the table between fitted parts whose ends no step brings together, not even in prose. */
function neverMade({ build, facts, everMade, partOfRef }: Bench): Connection[] {
  const read = Object.values(facts.steps).flatMap(({ connects }) => connects.map(({ value }) => value));
  const spoken = facts.pins.flatMap(({ value }) =>
    value.other === null ? [] : [{ from: value.end, to: value.other }],
  );
  const nets = netsOf([...everMade, ...read, ...spoken]);
  const named = new Set([...everMade, ...read].map(({ connection }) => connection));
  const isFitted = (ref: string) => partOfRef(ref)?.fitted ?? true;
  return build.connections.filter(
    ({ id, from, to }) => !named.has(id) && !nets.joined(from, to) && isFitted(from.ref) && isFitted(to.ref),
  );
}
