/** The word that another was most likely meant to be: one or two letters away. Null where none is that near. */
export function nearestWord(word: string, words: readonly string[]): string | null {
  let best: string | null = null;
  let bestDistance = Math.min(2, Math.floor(word.length / 3)) + 1;
  for (const candidate of words) {
    if (Math.abs(candidate.length - word.length) >= bestDistance) continue;
    const distance = editDistance(word, candidate);
    if (distance < bestDistance) [best, bestDistance] = [candidate, distance];
  }
  return best;
}

/** Letters to insert, delete, replace or swap with their neighbour (optimal string alignment). */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swaps = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swapped = swaps ? (before[j - 2] ?? 0) + 1 : replaced;
      next.push(Math.min(replaced, swapped, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    [before, row] = [row, next];
  }
  return row[b.length] ?? 0;
}
