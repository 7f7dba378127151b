import { type Connection, type Endpoint, endpointId } from '#core/connection.ts';
import type { Join } from '#core/step.ts';
import { comparePins, type PinComparison, parsePin } from '#notation/pins.ts';
import type { Nets } from './nets.ts';

/**
 * How a join stands to the wiring table: it `agrees`; it is `otherwise` where the table joins one of its ends to
 * another pin of the same part; it is `absent` where the table knows both parts but no such wire; and nothing
 * can be told where pins are named in another way, or a part is not in the table.
 */
export type JoinVerdict =
  | { readonly is: 'agrees' | 'absent' | 'cannot-tell' }
  | { readonly is: 'otherwise'; readonly row: Connection };

/** Holds one join against the wiring table. */
export function compareJoin(join: Pick<Join, 'from' | 'to'>, rows: readonly Connection[], nets: Nets): JoinVerdict {
  if (nets.joined(join.from, join.to)) return { is: 'agrees' };
  if (!knows(rows, join.from) || !knows(rows, join.to)) return { is: 'cannot-tell' };
  let otherwise: Connection | null = null;
  for (const row of rows) {
    const ends = facing(join, row);
    if (ends === null) continue;
    const [first, second] = ends.map(([a, b]) => compareEnds(a, b, rows));
    if (first !== 'different' && second !== 'different') {
      return { is: first === 'same' && second === 'same' ? 'agrees' : 'cannot-tell' };
    }
    const isHalf = (first === 'same' && second === 'different') || (first === 'different' && second === 'same');
    if (isHalf) otherwise ??= row;
  }
  return otherwise === null ? { is: 'absent' } : { is: 'otherwise', row: otherwise };
}

/**
 * The table names pins of one part apart: where it has both names, they are two pins, unless they are known for one.
 * Where it counts the pins of a part by a name (COL1, COL2), another number of that name is another pin than all others.
 */
function compareEnds(a: Endpoint, b: Endpoint, rows: readonly Connection[]): PinComparison {
  const compared = comparePins(a.pin, b.pin);
  if (compared !== 'cannot-tell') return compared;
  const here = rows.flatMap(({ from, to }) => [from, to]).filter((end) => sameRef(end, a));
  const isNamed = here.some((end) => endpointId(end) === endpointId(a));
  const stem = countedStem(a.pin);
  const counted = here.filter(({ pin }) => stem !== null && countedStem(pin) === stem);
  return isNamed || new Set(counted.map(({ pin }) => pin.toUpperCase())).size > 1 ? 'different' : 'cannot-tell';
}

/** COL of COL4; null of a label that boards give a meaning of its own, such as D5 or GPIO5. */
function countedStem(pin: string): string | null {
  const { family } = parsePin(pin);
  if (family !== 'named' && family !== 'analogue') return null;
  return /^(.*[^\d])\d{1,3}$/u.exec(pin.trim().toUpperCase())?.[1] ?? null;
}

/** Whether a row joins the ends of a join, as far as names tell. */
export function mayBeRowOf(join: Pick<Join, 'from' | 'to'>, rows: readonly Connection[]): boolean {
  return rows.some((row) => facing(join, row)?.every(([a, b]) => compareEnds(a, b, rows) !== 'different') === true);
}

function knows(rows: readonly Connection[], end: Endpoint): boolean {
  return rows.some(({ from, to }) => sameRef(from, end) || sameRef(to, end));
}

/** The ends of join and row that lie on the same parts, pair by pair; null where the row joins other parts. */
function facing(join: Pick<Join, 'from' | 'to'>, row: Connection): [Endpoint, Endpoint][] | null {
  if (sameRef(join.from, row.from) && sameRef(join.to, row.to))
    return [
      [join.from, row.from],
      [join.to, row.to],
    ];
  if (sameRef(join.from, row.to) && sameRef(join.to, row.from))
    return [
      [join.from, row.to],
      [join.to, row.from],
    ];
  return null;
}

function sameRef(a: Endpoint, b: Endpoint): boolean {
  return a.ref.toUpperCase() === b.ref.toUpperCase();
}
