import type { Ref } from '#core/part.ts';
import { remember } from '#core/remember.ts';
import { parseRefs } from '#notation/refs.ts';
import type { KnownThings } from '../knownThings.ts';

/** References that are named in one breath, such as 'R1 and R2' or `R1–R4`. */
export interface RefGroup {
  readonly refs: readonly Ref[];
  /** True for one range alone. */
  readonly isRange: boolean;
  readonly start: number;
  readonly end: number;
}

const word =
  /(?<![\p{L}\p{N}_./\\-])[A-Z]{1,4}\d{1,5}(?:\s?[–—-]\s?[A-Z]{0,4}\d{1,5})?(?![\p{L}\p{N}_]|\.[\p{L}\p{N}+−-])/gu;
const joining = /^\s*(?:,|&|\/|\+)?\s*(?:and|or|und|oder|et|y)?\s*$/u;
const pinBefore =
  /(?:\b(?:pins?|keys?|gpios?|pads?|ports?|terminals?|inputs?|outputs?)|\bpins?\s+[A-Z0-9]+(?:,| and| or| to)?)\s*[:#(]?\s*$/iu;

/** What looks like references, listed or not. */
const namedIn = remember((sentence) =>
  [...sentence.matchAll(word)].flatMap((match) => {
    const { refs } = parseRefs(match[0]);
    const isPart = refs.length > 0 && !pinBefore.test(sentence.slice(0, match.index));
    return isPart ? [{ refs, start: match.index, end: match.index + match[0].length }] : [];
  }),
);

/**
 * Listed references that a sentence names as parts. A word counts only where the parts list has it and the words
 * around do not speak of a pin or a key, since D1 or K2 may be either.
 */
export function refGroups(sentence: string, known: KnownThings): RefGroup[] {
  const groups: RefGroup[] = [];
  for (const { refs, start, end } of namedIn(sentence)) {
    if (!refs.every((ref) => known.partOfRef.has(ref))) continue;
    const last = groups.at(-1);
    if (
      last !== undefined &&
      joining.test(sentence.slice(last.end, start)) &&
      sentence.slice(last.end, start).trim() !== ''
    ) {
      groups[groups.length - 1] = { refs: [...last.refs, ...refs], isRange: false, start: last.start, end };
    } else groups.push({ refs, isRange: refs.length > 1, start, end });
  }
  return groups;
}
