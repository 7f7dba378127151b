/** How often a random test runs: as often as named, or twenty times that in the long tests. */
export function runs(count: number): number {
  return process.env.TWICEBUILT_LONG === undefined ? count : count * 20;
}
