/** The value that `share` of all values (0 to 1) lie below, between two neighbours in proportion; NaN for none. */
export function quantileOf(values: ArrayLike<number>, share: number): number {
  const sorted = new Float64Array(values).sort();
  const at = share * (sorted.length - 1);
  const low = sorted[Math.floor(at)] ?? Number.NaN;
  const high = sorted[Math.ceil(at)] ?? Number.NaN;
  return low + (high - low) * (at - Math.floor(at));
}
