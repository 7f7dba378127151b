import { lexRows } from './lexRows.ts';

export const delimiters = [',', ';', '\t', '|'] as const;

export type Delimiter = (typeof delimiters)[number];

/** Rows that are looked at: more than any title before the header, few enough to be quick. */
const rowsLookedAt = 60;

/** The delimiter that cuts most rows into the same number of cells; a comma where none does. */
export function findDelimiter(text: string): Delimiter {
  let best: Delimiter = ',';
  let bestScore = 0;
  for (const delimiter of delimiters) {
    const score = regularity(text, delimiter);
    if (score > bestScore) [best, bestScore] = [delimiter, score];
  }
  return best;
}

/** 0 where nothing is cut; grows with the share of rows that agree, and slowly with the number of cells. */
function regularity(text: string, delimiter: Delimiter): number {
  const rows = lexRows(text, { delimiter, from: 0, line: 1, mostRows: rowsLookedAt })
    .map(({ cells, span }) => ({ cells: cells.length, text: text.slice(span[0], span[1]) }))
    .filter((row) => row.text.trim() !== '');
  const cut = rows.filter(({ cells }) => cells > 1);
  if (cut.length === 0) return 0;
  const usual = mostCommon(cut.map(({ cells }) => cells));
  const agreeing = cut.filter(({ cells }) => cells === usual).length;
  // Ragged rows still speak for a delimiter, though less than those that agree.
  const share = (agreeing + 0.25 * (cut.length - agreeing)) / rows.length;
  return share * Math.log2(usual) * (delimiter === ',' ? 1 - decimalShare(rows.map((row) => row.text)) : 1);
}

/** Share of the commas that stand between digits, as in '4,7': such commas are no delimiters where others could be. */
function decimalShare(lines: readonly string[]): number {
  const all = lines.join('\n');
  const commas = all.split(',').length - 1;
  const decimal = all.match(/\d,(?=\d)/g)?.length ?? 0;
  return commas === 0 ? 0 : (0.5 * decimal) / commas;
}

function mostCommon(numbers: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const number of numbers) counts.set(number, (counts.get(number) ?? 0) + 1);
  let best = 0;
  for (const [number, count] of counts) if (count > (counts.get(best) ?? 0)) best = number;
  return best;
}
