import type { Span } from '#core/place.ts';

/** A region that differs between two versions of a text: what it was, and what it is now. */
export interface Region {
  readonly old: Span;
  readonly now: Span;
  /** Whole lines were put in or taken out, and none was changed. */
  readonly wholeLines: boolean;
}

/**
 * Where two versions of a text differ, in ascending order; all text between is the same in both. Lines are matched
 * from both ends, then by those that occur once in each version; what remains is narrowed to characters.
 */
export function changedRegions(older: string, newer: string): Region[] {
  const old = linesOf(older);
  const now = linesOf(newer);
  const regions: Region[] = [];
  matchLines({ old, now, from: [0, 0], to: [old.length - 1, now.length - 1] }, (old, now) =>
    regions.push({ old, now, wholeLines: old[0] === old[1] || now[0] === now[1] }),
  );
  return joinTouching(regions).map((region) => narrowed(older, newer, region));
}

interface Line {
  readonly text: string;
  readonly start: number;
}

/** Lines with their ends; a last, empty one marks where the text stops. */
function linesOf(text: string): Line[] {
  const lines: Line[] = [];
  for (const match of text.matchAll(/[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+$/g))
    lines.push({ text: match[0], start: match.index });
  lines.push({ text: '', start: text.length });
  return lines;
}

interface Stretch {
  readonly old: readonly Line[];
  readonly now: readonly Line[];
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

function matchLines(stretch: Stretch, found: (old: Span, now: Span) => void): void {
  const { old, now } = stretch;
  let [a, b] = stretch.from;
  let [c, d] = stretch.to;
  const same = (i: number, j: number) => old[i]?.text === now[j]?.text;
  while (a < c && b < d && same(a, b)) [a, b] = [a + 1, b + 1];
  while (a < c && b < d && same(c - 1, d - 1)) [c, d] = [c - 1, d - 1];
  if (a === c && b === d) return;
  const anchors = anchorsOf(old.slice(a, c), now.slice(b, d)).map(([i, j]) => [a + i, b + j] as const);
  if (anchors.length === 0) {
    found([start(old, a), start(old, c)], [start(now, b), start(now, d)]);
    return;
  }
  let from: readonly [number, number] = [a, b];
  for (const anchor of [...anchors, [c, d] as const]) {
    matchLines({ old, now, from, to: anchor }, found);
    from = [anchor[0] + 1, anchor[1] + 1];
  }
}

function start(lines: readonly Line[], index: number): number {
  return lines[index]?.start ?? 0;
}

/** Pairs of lines that occur once in each version, the longest run of them that ascends in both. */
function anchorsOf(old: readonly Line[], now: readonly Line[]): [number, number][] {
  const inOld = occurringOnce(old);
  const inNow = occurringOnce(now);
  const pairs: [number, number][] = [];
  for (const [text, i] of inOld) {
    const j = inNow.get(text);
    if (j !== undefined) pairs.push([i, j]);
  }
  return longestAscending(pairs);
}

function occurringOnce(lines: readonly Line[]): Map<string, number> {
  const at = new Map<string, number>();
  const repeated = new Set<string>();
  for (const [i, { text }] of lines.entries()) {
    if (at.has(text)) repeated.add(text);
    at.set(text, i);
  }
  for (const text of repeated) at.delete(text);
  return at;
}

/** Patience sorting: pairs ascend in their first member, and the longest run is found that ascends in the second. */
function longestAscending(pairs: readonly [number, number][]): [number, number][] {
  interface Card {
    readonly pair: [number, number];
    readonly below: Card | null;
  }
  const piles: Card[] = [];
  for (const pair of pairs) {
    let low = 0;
    let high = piles.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((piles[middle]?.pair[1] ?? 0) < pair[1]) low = middle + 1;
      else high = middle;
    }
    piles[low] = { pair, below: piles[low - 1] ?? null };
  }
  const run: [number, number][] = [];
  for (let card = piles.at(-1) ?? null; card !== null; card = card.below) run.push(card.pair);
  return run.reverse();
}

function joinTouching(regions: readonly Region[]): Region[] {
  const joined: Region[] = [];
  for (const region of regions) {
    const last = joined.at(-1);
    if (last !== undefined && last.old[1] === region.old[0] && last.now[1] === region.now[0]) {
      joined[joined.length - 1] = {
        old: [last.old[0], region.old[1]],
        now: [last.now[0], region.now[1]],
        wholeLines: false,
      };
    } else {
      joined.push(region);
    }
  }
  return joined;
}

/** Leaves out the characters that both versions share at the ends of a region. */
function narrowed(older: string, newer: string, { old, now, wholeLines }: Region): Region {
  let [a, c] = old;
  let [b, d] = now;
  while (a < c && b < d && older[a] === newer[b]) [a, b] = [a + 1, b + 1];
  while (a < c && b < d && older[c - 1] === newer[d - 1]) [c, d] = [c - 1, d - 1];
  return { old: [a, c], now: [b, d], wholeLines };
}
