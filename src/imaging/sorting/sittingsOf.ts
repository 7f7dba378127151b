/** A pause of more than this, in seconds, ends a sitting: an hour and a half. */
const pause = 5400;

/**
 * Sittings at the bench: times (seconds, in any order) that follow one another without a longer pause, as the places of
 * the times in the list, each sitting and the sittings in order of time.
 */
export function sittingsOf(times: readonly number[], longest = pause): readonly (readonly number[])[] {
  const order = Array.from(times.keys()).sort((a, b) => (times[a] ?? 0) - (times[b] ?? 0) || a - b);
  const sittings: number[][] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const i of order) {
    const time = times[i] ?? 0;
    if (time - last > longest) sittings.push([]);
    sittings.at(-1)?.push(i);
    last = time;
  }
  return sittings;
}
