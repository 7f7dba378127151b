import type { Ref } from '#core/part.ts';

/** References in the order written, in upper case, each once; `problem` says what could not be read as one. */
export interface RefsReading {
  readonly refs: Ref[];
  readonly problem: string | null;
}

/** A range of more parts than this is taken for a slip of the pen. */
const largestRange = 1000;
/** Longer cells are no lists of references. */
const longest = 20_000;

/** Whether a word has the form of a reference designator: one to four letters, then one to five digits. */
export function isRef(text: string): boolean {
  return /^[A-Za-z]{1,4}\d{1,5}$/u.test(text);
}

/**
 * A list of references as parts lists write it: `R1-R4`, `R1…4`, `C1, C3`, `C1 C3`, `RN1 to RN10`, `R1+R2`. A range has
 * one prefix and ascends. What cannot be read is named in `problem`; the rest is read all the same.
 */
export function parseRefs(text: string): RefsReading {
  if (text.length > longest) return { refs: [], problem: 'The list is too long to be one of references.' };
  const refs = new Set<Ref>();
  let problem: string | null = null;
  const note = (message: string) => {
    problem ??= message;
  };
  for (const item of text.replace(between, '-').split(/[\s,;+/&]+|\band\b/u)) {
    if (item === '') continue;
    for (const ref of refsOf(item, note)) {
      if (refs.has(ref)) note(`${ref} is named twice.`);
      refs.add(ref);
    }
  }
  return { refs: [...refs], problem };
}

/** What joins the two ends of a range: a dash, dots, or the word. */
const between = /(?<=\d)\s*(?:[-‐‑–—−…~]|\.{2,3}|(?<=\s)to(?=\s))\s*(?=[A-Za-z]{0,4}\d)/giu;

function refsOf(item: string, note: (message: string) => void): readonly Ref[] {
  if (isRef(item)) return [item.toUpperCase()];
  const ends = /^([A-Za-z]{1,4})(\d{1,5})-([A-Za-z]{0,4})(\d{1,5})$/u.exec(item);
  if (ends === null) {
    note(
      `“${item.slice(0, 40)}” is no reference designator; expected letters and a number, such as R1, or a range such as R1-R4.`,
    );
    return [];
  }
  const [, letters = '', first = '', otherLetters = '', last = ''] = ends;
  const prefix = letters.toUpperCase();
  const count = Number(last) - Number(first) + 1;
  if (otherLetters !== '' && otherLetters.toUpperCase() !== prefix) {
    note(`The range ${item} has two prefixes; expected one, such as ${prefix}${first}-${prefix}${last}.`);
  } else if (count < 2) {
    note(`The range ${item} does not ascend; expected the smaller number first.`);
  } else if (count > largestRange) {
    note(`The range ${item} would be ${count} parts; expected at most ${largestRange}.`);
  } else {
    return Array.from(
      { length: count },
      (_, index) => prefix + String(Number(first) + index).padStart(first.length, '0'),
    );
  }
  return [];
}
