import table from './packages.json';

/** Whether a word names the body of a part: `0603`, `SOT-23`, `DIP8`, `TO-92`, `axial`. */
export function isPackage(word: string): boolean {
  return table.chips.includes(word) || outline.test(word);
}

/** Whether a word is a chip size that could also be a plain number, as `1206` could and `0603` could not. */
export function looksLikeNumber(word: string): boolean {
  return /^[1-9]\d+$/u.test(word);
}

const outlines = table.outlines.join('|');
const bare = table.bare.join('|');
const outline = new RegExp(
  `^(?:${table.words.join('|')}|${bare}|(?:${outlines}|${bare})-?\\d{1,4}(?:-\\d{1,3})?[A-Z]?)$`,
  'u',
);
