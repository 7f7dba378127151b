/** Marks that a part stays off the board. `NC` is none inside a sentence, where it can mean a normally closed contact. */
const mark =
  /^(?:dnp|dnf|dni|dnm|n\.?m\.?|n\.?c\.?|nf|no ?pop|no ?fit|not ?(?:fitted|populated|placed|mounted|installed|assembled|used)|do not (?:fit|place|populate|mount|install|assemble)|unpopulated|unfitted|omit(?:ted)?|leave (?:out|empty))\b\.?/i;
const markWithin = /(?:^|[\s,;/(])(?:dnp|dnf|dni)(?=$|[\s,;/)])/i;

/** Whether a cell is, or begins with, a mark that the part is not fitted. */
export function isNotFittedMark(text: string): boolean {
  return mark.test(text.trim());
}

/** Whether a value such as '10k DNP' carries the mark. */
export function carriesNotFittedMark(text: string): boolean {
  return isNotFittedMark(text) || markWithin.test(text);
}

/**
 * What a cell of a column about fitting says. In a column that is named after not fitting, any mark means not fitted;
 * elsewhere a refusal does. Null where the cell says neither.
 */
export function isFitted(text: string, columnIsNegative: boolean): boolean | null {
  const plain = text.trim().toLowerCase();
  if (plain === '') return columnIsNegative ? true : null;
  if (isNotFittedMark(plain)) return false;
  const isYes = /^(?:1|x|y|yes|true|t|✓|✔|☑|ja|oui|si|sí)$/.test(plain);
  const isNo = /^(?:0|n|no|false|f|-|–|✗|✘|☐|nein|non|none)$/.test(plain);
  if (isYes) return !columnIsNegative;
  if (isNo) return columnIsNegative;
  return null;
}
