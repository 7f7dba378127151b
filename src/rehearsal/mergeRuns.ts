import type { Stop } from '#core/ledger.ts';

/** Where any builder halts on the way, each stop once. */
export function stopsOnTheWay(runs: readonly (readonly Stop[])[]): Stop[] {
  return distinct(runs.flat());
}

/** What lacks at the end for every builder: the parts and wires of one variant are not missing in another. */
export function stopsAtEnd(runs: readonly (readonly Stop[])[]): Stop[] {
  const [first = [], ...others] = runs;
  const keys = others.map((stops) => new Set(stops.map(wholeKey)));
  return distinct(first).filter((stop) => keys.every((known) => known.has(wholeKey(stop))));
}

function distinct(stops: readonly Stop[]): Stop[] {
  const seen = new Set<string>();
  return stops.filter((stop) => !seen.has(keyOf(stop)) && seen.add(keyOf(stop)) !== undefined);
}

/** Two builders who stop at the same words for the same thing, whatever each had left. */
function keyOf(stop: Stop): string {
  return JSON.stringify(stop, (name, value) => (countedByRun.has(name) ? undefined : value));
}

const countedByRun: ReadonlySet<string> = new Set(['had', 'wanted', 'arrives', 'before', 'since', 'on']);

function wholeKey(stop: Stop): string {
  return JSON.stringify(stop);
}
