/**
 * Ranks for headings of these depths, from `top` down to 6: each one below the heading that holds it, so that no
 * rank is skipped, however the maker numbered the depths.
 */
export function headingRanks(depths: readonly number[], top: number): number[] {
  const open: number[] = [];
  return depths.map((depth) => {
    while (open.length > 0 && (open.at(-1) ?? 0) >= depth) open.pop();
    open.push(depth);
    return Math.min(top + open.length - 1, 6);
  });
}
