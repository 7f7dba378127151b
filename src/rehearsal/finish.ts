import type { Connection } from '#core/connection.ts';
import type { Coverage, Stop } from '#core/ledger.ts';
import type { Part } from '#core/part.ts';
import { stockOf } from './amounts.ts';
import type { Bench } from './bench.ts';
import { declaresEnough } from './coverage.ts';
import { netsOf } from './nets.ts';

/** What is left lying on the bench after the last step, where the guide declares enough for that to mean something. */
export function finishSteps(bench: Bench, coverage: Coverage): Stop[] {
  const stops: Stop[] = [];
  if ((coverage.parts ?? 0) >= declaresEnough) {
    for (const part of bench.build.parts) {
      const left = leftOf(bench, part);
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
 * anything; and what belongs to an option is nobody's loss.
 */
function leftOf(bench: Bench, part: Part): number {
  if (!part.fitted || bench.optionalParts.has(part.id)) return 0;
  const left = bench.bag.left(part);
  if (stockOf(part)?.unit !== 'pcs') return left === stockOf(part)?.n ? left : 0;
  const mentioned = spokenOf(bench, part);
  if (part.refs.length === 0) return Math.max(0, left - mentioned.size);
  const taken = new Set(bench.script.flatMap(({ facts }) => facts.uses.map(({ value }) => value.ref)));
  return Math.max(0, left - part.refs.filter((ref) => mentioned.has(ref) && !taken.has(ref)).length);
}

/** References of a part that joins or prose name; its id where it is named as a whole. */
function spokenOf(bench: Bench, part: Part): Set<string> {
  const named = new Set<string>();
  const isOurs = (ref: string | null) => ref !== null && part.refs.includes(ref);
  for (const facts of Object.values(bench.facts.steps)) {
    for (const { value } of facts.connects)
      for (const end of [value.from, value.to]) if (isOurs(end.ref)) named.add(end.ref);
    for (const { value, basis } of facts.uses) {
      if (value.part === part.id && basis !== 'declared')
        for (const ref of value.ref === null ? (part.refs.length === 0 ? [part.id] : part.refs) : [value.ref])
          named.add(ref);
    }
  }
  return named;
}

/** Wires of the table between fitted parts whose ends no step brings together, not even in prose. */
function neverMade(bench: Bench): Connection[] {
  const read = Object.values(bench.facts.steps).flatMap(({ connects }) => connects.map(({ value }) => value));
  const spoken = bench.facts.pins.flatMap(({ value }) =>
    value.other === null ? [] : [{ from: value.end, to: value.other }],
  );
  const nets = netsOf([...bench.everMade, ...read, ...spoken]);
  const named = new Set([...bench.everMade, ...read].map(({ connection }) => connection));
  const isFitted = (ref: string) => bench.partOfRef(ref)?.fitted ?? true;
  return bench.build.connections.filter(
    ({ id, from, to }) => !named.has(id) && !nets.joined(from, to) && isFitted(from.ref) && isFitted(to.ref),
  );
}
