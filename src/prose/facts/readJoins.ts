import { type Claim, declared } from '#core/claim.ts';
import { connectionId } from '#core/connection.ts';
import type { Problem } from '#core/problem.ts';
import type { Join, PartUse, WrittenFact } from '#core/step.ts';
import { parseJoin } from '#notation/pins.ts';
import type { KnownThings } from '../knownThings.ts';
import { type FactItem, itemsOf, type Reading } from './reading.ts';
import { usesOf } from './readUses.ts';

/** `Connects: H1.IN – R1.2, …`: the connections that a step makes. */
export function readConnects(fact: WrittenFact, known: KnownThings): Reading<Join> {
  const claims: Claim<Join>[] = [];
  const problems: Problem[] = [];
  for (const item of itemsOf(fact)) {
    const join = joinOf(item, known);
    if (join === null) problems.push(noConnection(item, known));
    else claims.push(declared(join, item.place));
  }
  return { claims, problems };
}

/** `Removes: U1, H1.IN – R1.2`: what a step takes away again. */
export function readRemoves(fact: WrittenFact, known: KnownThings): Reading<Join | PartUse> {
  const claims = itemsOf(fact).flatMap((item): Claim<Join | PartUse>[] => {
    const join = joinOf(item, known);
    return join === null
      ? usesOf(item, known).map((use) => declared<Join | PartUse>(use, item.place))
      : [declared<Join | PartUse>(join, item.place)];
  });
  return { claims, problems: [] };
}

function joinOf(item: FactItem, known: KnownThings): Join | null {
  const ends = parseJoin(item.text, known.refs);
  if (ends === null) return null;
  const id = connectionId(ends.from, ends.to);
  return { ...ends, id, connection: known.connections.has(id) ? id : null };
}

function noConnection({ text, place }: FactItem, known: KnownThings): Problem {
  const named = [...text.matchAll(/([A-Za-z]{1,4}\d{1,5})\s*\./g)].map((match) => (match[1] ?? '').toUpperCase());
  const strangers = [...new Set(named.filter((ref) => !known.refs.has(ref)))];
  const because =
    strangers.length > 0
      ? `${strangers.join(' and ')} stands in neither the parts list nor the wiring`
      : 'it names no two pins';
  return {
    place,
    message: `'${text}' cannot be read as a connection: ${because}. Expected two pins of listed parts with a dash between, such as U1.D5 – R1.1.`,
    remedy:
      strangers.length > 0
        ? 'Correct the reference, or add the part to the parts list.'
        : 'Write both ends as reference, dot, pin.',
  };
}
