import type { Likeness } from './likenessOf.ts';
import { differingBits, layoutDistance, type Signature } from './signatureOf.ts';

/** A shot as grouping sees it. */
export interface DatedShot {
  readonly id: string;
  /** Seconds, from any start that all share; null where the shot does not say. */
  readonly time: number | null;
  readonly signature: Signature;
}

/** Says how two shots are alike; asked at most once for each pair. */
export type CompareShots = (first: string, second: string) => Promise<Likeness['kind']> | Likeness['kind'];

/** Shots so many seconds apart are compared whatever they look like from afar: a hand turns, a lamp goes on. */
const burst = 90;
/** Others have to look alike from afar: by bits that differ, and by the colours of their fields. */
const mostBits = 0.3;
const farthest = 40;
/** Shots of two groups that are compared before the groups become one. */
const mostChecks = 6;

/**
 * Shots of the same thing in the same state, in groups of two or more, each in order of time, the earliest group first.
 * Pairs that may be alike are compared, the nearest in time first; two groups become one when a pair of theirs is the
 * same and no other pair of theirs (six at most are looked at) shows progress, so that a blurred frame between two
 * states does not join them.
 */
export async function groupShots(shots: readonly DatedShot[], compare: CompareShots): Promise<readonly string[][]> {
  const ordered = shots.toSorted(
    (a, b) => (a.time ?? Number.POSITIVE_INFINITY) - (b.time ?? Number.POSITIVE_INFINITY) || 0,
  );
  const known = new Map<string, Likeness['kind']>();
  const ask = async (a: DatedShot, b: DatedShot) => {
    const key = JSON.stringify([a.id, b.id]);
    const kind = known.get(key) ?? (await compare(a.id, b.id));
    known.set(key, kind);
    known.set(JSON.stringify([b.id, a.id]), kind);
    return kind;
  };
  const groupOf = new Map(ordered.map((shot) => [shot, [shot]]));
  for (const [a, b] of candidates(ordered)) {
    const [one, two] = [groupOf.get(a), groupOf.get(b)];
    if (!one || !two || one === two || isKnownApart(one, two, known)) continue;
    if ((await ask(a, b)) !== 'same' || (await showsProgress(one, two, ask))) continue;
    one.push(...two);
    for (const shot of two) groupOf.set(shot, one);
  }
  const groups = [...new Set(groupOf.values())].filter((group) => group.length > 1);
  const place = new Map(ordered.map((shot, i) => [shot, i]));
  const inOrder = groups.map((group) => group.toSorted((a, b) => (place.get(a) ?? 0) - (place.get(b) ?? 0)));
  return inOrder
    .toSorted(([a], [b]) => (a && b ? (place.get(a) ?? 0) - (place.get(b) ?? 0) : 0))
    .map((group) => group.map((shot) => shot.id));
}

/** Whether a pair of theirs was seen to show progress. */
function isKnownApart(
  one: readonly DatedShot[],
  two: readonly DatedShot[],
  known: ReadonlyMap<string, Likeness['kind']>,
): boolean {
  return one.some((a) => two.some((b) => known.get(JSON.stringify([a.id, b.id])) === 'progress'));
}

async function showsProgress(
  one: readonly DatedShot[],
  two: readonly DatedShot[],
  ask: (a: DatedShot, b: DatedShot) => Promise<Likeness['kind']>,
): Promise<boolean> {
  const pairs = one.flatMap((a) => two.map((b) => [a, b] as const));
  for (const [a, b] of pairs.slice(0, mostChecks)) if ((await ask(a, b)) === 'progress') return true;
  return false;
}

/** Pairs worth comparing, those nearest in time first. */
function candidates(shots: readonly DatedShot[]): readonly (readonly [DatedShot, DatedShot])[] {
  const found: { pair: readonly [DatedShot, DatedShot]; gap: number; bits: number }[] = [];
  for (const [i, a] of shots.entries()) {
    for (const b of shots.slice(i + 1)) {
      const gap = a.time === null || b.time === null ? Number.POSITIVE_INFINITY : Math.abs(b.time - a.time);
      const bits = differingBits(a.signature, b.signature);
      const alike = bits <= mostBits && layoutDistance(a.signature, b.signature) <= farthest;
      if (gap <= burst || alike) found.push({ pair: [a, b], gap, bits });
    }
  }
  // Infinite gaps are equal: their difference would be no number.
  const nearer = (a: number, b: number) => (a === b ? 0 : a - b);
  return found.sort((a, b) => nearer(a.gap, b.gap) || a.bits - b.bits).map(({ pair }) => pair);
}
