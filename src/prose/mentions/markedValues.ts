import type { Part, Ref } from '#core/part.ts';
import type { Quantity } from '#core/quantity.ts';
import { remember } from '#core/remember.ts';
import { parseCapacitorCode, parseColourBands, parseSmdResistorCode } from '#notation/codes.ts';
import { findQuantities, parseValue, sameQuantity } from '#notation/value.ts';
import type { KnownThings } from '../knownThings.ts';
import bandTable from './bandWords.json';
import { type RefGroup, refGroups } from './refGroups.ts';
import { valueKind } from './valueKind.ts';
import type { StatedValue } from './valuesInSentence.ts';

/** A value that the text tells by what is on the part: its colour bands, or the code printed on it. */
export interface MarkedValue extends StatedValue {
  readonly marked: 'bands' | 'code' | null;
}

const colour = `(?:${bandTable.colours.join('|')})`;
const between = '(?:\\s*[,/·-]\\s*(?:and\\s+)?|\\s+and\\s+|\\s+)';
const run = new RegExp(`(?<![\\p{L}-])${colour}(?:${between}${colour}){2,5}(?![\\p{L}-])`, 'giu');
const bandWord = /\b(?:bands?|banded|rings|stripes|colou?r[- ]?cod\w+)\b/iu;
const otherColours = /^\s*(?:wires?|leads?|cables?|insulat\w+|jumpers?|LEDs?|lights?|pixels?)\b/iu;
const otherTalk = /\b(?:instead|replac\w*|swap\w*|wrong\w*|mistake\w*|was|were|not|never|isn't|aren't)\b/iu;
const printed =
  /\b(?:printed|marked|stamped|labelled|labeled|imprinted|(?:the )?(?:code|marking|imprint|print)(?: is| reads)?)(?: with| on (?:it|them))?\s*[:"'“‘]?\s*(?<code>[1-9]\d{2}[BCDFGJKMZ]?|[1-9]\d{3}|\d?R\d{1,2})(?![\p{L}\p{N}]|\.\d)/giu;

/** Words that may stand between a reference and what is on its part. */
const link =
  'is|are|has|have|with|which|its|their|the|of|a|an|both|each|all|resistors?|capacitors?|caps?|ceramic|film|small|bands?|rings?|stripes?|colou?rs?|colou?r|code|reads?|show\\w*|on|(?:on|in) the \\w+|from left to right';
const value = '(?<![\\d.,])\\d+(?:[.,]\\d+)?(?!\\d)\\s?[kKMmunpµ]?(?:Ω|ohms?|R|F)?';
const linkBefore = new RegExp(`^(?:[\\s,:=()\\[–—-]|\\b(?:${link})\\b|${value})*$`, 'iu');
const linkAfter =
  /^[\s,)\]–—-]*(?:(?:bands?|rings|is|are|for|on|means?|resistors?|capacitors?|go(?:es)? to|the)\b[\s,:([–—-]*)*$/iu;
const forAll = /\b(?:both|each|all|are|their)\b|[:=]/iu;
const pluralBefore = /\b(?:bands of|resistors|capacitors|caps)\s+(?:the\s+)?$/iu;
/** The value beside the bands: `(10 kΩ)`, 'which is 1 kΩ', '= 330 Ω'. */
const valueBeside = /^[\s,:;(=–—-]*(?:(?:which is|that is|which are|for|means?|is|i\.e\.)\s+)?(?=\d)/iu;

/**
 * Values told by bands and printed codes, with the value that stands right after bands. `text` is the text around the
 * sentence, which may speak of bands once for all. None where it is not certain which part is meant.
 */
export function markedValues(sentence: string, text: string, known: KnownThings): MarkedValue[] {
  const { runs, codes } = marksIn(sentence);
  if ((runs.length === 0 && codes.length === 0) || otherTalk.test(sentence)) return [];
  const groups = refGroups(sentence, known);
  return [
    ...runs.flatMap((match) => bandsAt(match, sentence, text, groups, known)),
    ...codes.flatMap((match) => codeAt(match, sentence, groups, known)),
  ];
}

const marksIn = remember(
  (sentence): Readonly<Record<'runs' | 'codes', readonly RegExpExecArray[]>> => ({
    runs: [...sentence.matchAll(run)],
    codes: [...sentence.matchAll(printed)],
  }),
);

function bandsAt(
  match: RegExpExecArray,
  sentence: string,
  text: string,
  groups: readonly RefGroup[],
  known: KnownThings,
): MarkedValue[] {
  const start = match.index;
  const end = start + match[0].length;
  const colours = match[0].toLowerCase().split(new RegExp(between, 'iu'));
  const endsAsBands = ['gold', 'silver'].includes(colours.at(-1) ?? '');
  if (!endsAsBands && !speaksOfBands(colours, sentence, text)) return [];
  if (otherColours.test(sentence.slice(end))) return [];
  const refs = refsBeside(sentence, start, end, groups, 'resistance');
  const readings = bandReadings(colours);
  const bands = refs.flatMap((ref) => {
    const quantity = likeliest(readings, known.partOfRef.get(ref), match[0]);
    return quantity === null ? [] : [{ refs: [ref], quantity, start, end, marked: 'bands' as const }];
  });
  return [...bands, ...valueAfter(sentence, end, refs)];
}

/** No gold and no silver: the words must tell that these are bands, and no wires. */
function speaksOfBands(colours: readonly string[], sentence: string, text: string): boolean {
  if (/\b(?:wires?|cables?|leads?)\b/iu.test(sentence)) return false;
  return bandWord.test(sentence) || (colours.length > 3 && bandWord.test(text));
}

/** As written, from the other end, and with the last band left away. */
function bandReadings(colours: readonly string[]): Quantity[] {
  const open = colours.length === 4 ? [...colours, 'brown'] : null;
  return [colours, [...colours].reverse(), ...(open === null ? [] : [open])].flatMap(
    (one) => parseColourBands(one)?.value ?? [],
  );
}

function valueAfter(sentence: string, end: number, refs: readonly Ref[]): MarkedValue[] {
  const lead = valueBeside.exec(sentence.slice(end))?.[0];
  const found = findQuantities(sentence.slice(end))[0];
  if (lead === undefined || found === undefined || found.start !== lead.length || refs.length === 0) return [];
  if (found.quantity.kind !== 'resistance') return [];
  return [{ refs, quantity: found.quantity, start: end + found.start, end: end + found.end, marked: null }];
}

function codeAt(
  match: RegExpExecArray,
  sentence: string,
  groups: readonly RefGroup[],
  known: KnownThings,
): MarkedValue[] {
  const code = match.groups?.code ?? '';
  const start = match.index;
  const end = start + match[0].length;
  return (['resistance', 'capacitance'] as const).flatMap((kind) =>
    refsBeside(sentence, start, end, groups, kind).flatMap((ref) => {
      const coded = kind === 'resistance' ? parseSmdResistorCode(code) : parseCapacitorCode(code);
      // A mark that ends in a nought may be the plain value: 220 on a capacitor is 22 pF, 220 pF or 220 µF.
      const plain = /^\d+0$/.test(code) ? plainReadings(code, kind) : [];
      const listed = known.partOfRef.get(ref);
      const quantity = coded === null ? null : likeliest([coded, ...plain], listed, match[0]);
      const isOpen = plain.length > 0 && !isListed(quantity, listed);
      return quantity === null || isOpen ? [] : [{ refs: [ref], quantity, start, end, marked: 'code' as const }];
    }),
  );
}

function plainReadings(code: string, kind: 'resistance' | 'capacitance'): Quantity[] {
  const units = kind === 'resistance' ? ['Ω'] : ['pF', 'nF', 'µF'];
  return units.flatMap((unit) => parseValue(`${code} ${unit}`, { kind }) ?? []);
}

/** The reading that the list has, else the first. */
function likeliest(readings: readonly Quantity[], part: Part | undefined, text: string): Quantity | null {
  const found = readings.find((one) => isListed(one, part)) ?? readings[0];
  return found === undefined ? null : { ...found, text };
}

function isListed(quantity: Quantity | null, part: Part | undefined): boolean {
  if (quantity === null || part === undefined || part.value.is === 'unknown') return false;
  return part.value.claims.some(({ value: listed }) => sameQuantity(listed, quantity));
}

/** The references that a mark from `start` to `end` is told of: those before it, else those right after it. */
function refsBeside(
  sentence: string,
  start: number,
  end: number,
  groups: readonly RefGroup[],
  kind: Quantity['kind'],
): readonly Ref[] {
  const left = groups.findLast((group) => group.end <= start);
  if (left !== undefined) {
    const gap = sentence.slice(left.end, start);
    if (linkBefore.test(gap)) return isOf(left, kind) ? told(left, gap, sentence) : [];
  }
  const right = groups.find((group) => group.start >= end);
  if (right === undefined || !isOf(right, kind)) return [];
  const gap = sentence.slice(end, right.start);
  if (!linkAfter.test(gap)) return [];
  return right.refs.length === 1 || forAll.test(gap) ? right.refs : [];
}

function isOf({ refs }: RefGroup, kind: Quantity['kind']): boolean {
  return refs.every((ref) => valueKind(ref) === kind);
}

/** 'R1 and R2, brown, black, red, gold' may mean R2 alone. */
function told(group: RefGroup, gap: string, sentence: string): readonly Ref[] {
  const isAll = group.isRange || forAll.test(gap) || pluralBefore.test(sentence.slice(0, group.start));
  return group.refs.length === 1 || isAll ? group.refs : group.refs.slice(-1);
}
