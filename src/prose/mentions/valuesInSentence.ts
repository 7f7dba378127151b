import type { Ref } from '#core/part.ts';
import type { Quantity } from '#core/quantity.ts';
import { type FoundQuantity, findQuantities } from '#notation/value.ts';
import type { KnownThings } from '../knownThings.ts';
import { type RefGroup, refGroups } from './refGroups.ts';
import { valueKind } from './valueKind.ts';

/** A value and the references it is stated for; from `start` to `end` of the sentence. */
export interface StatedValue {
  readonly refs: readonly Ref[];
  readonly quantity: Quantity;
  readonly start: number;
  readonly end: number;
}

/** Sentences that tell of a reading, a change or a mistake do not tell what a part is. */
const otherTalk =
  /\b(?:measur\w*|multimeter|ohmmeter|meter|reads?|reading|probes?|parallel|total|sum|instead|replac\w*|swap\w*|chang\w*|substitut\w*|equivalent|wrong\w*|mistake\w*|was|were|not|never|isn't|aren't|formerly|originally)\b/iu;
const nouns = 'resistors?|capacitors?|caps?|inductors?|coils?|crystals?|fuses?|pull-?(?:up|down)s?';
const kinds = 'ceramic|electrolytic|film|carbon|metal|disc|radial|axial|resettable|series|current-limiting';
const after = new RegExp(
  `^[\\s:=,([–—-]*(?:(?:is|are|has|have|both|each|all|a|an|the|of|with|value|at|which|must|should|be|${nouns}|${kinds})\\b[\\s:=,([–—-]*)*$`,
  'iu',
);
const before = new RegExp(`^[\\s)\\],–—-]*(?:(?:${nouns}|${kinds}|for|as|into|the|each|both)\\b[\\s,:([–—-]*)*$`, 'iu');
const isForAll =
  /\b(?:both|each|all|are)\b|\b(?:resistors|capacitors|caps|inductors|coils|crystals|fuses|pull-?(?:up|down)s)\b|[:=]/iu;
const pluralBefore = /\b(?:resistors|capacitors|caps|inductors|coils|crystals|fuses|pull-?(?:up|down)s)\s*$/iu;
/** What makes a quantity a limit, one of several, or a step of a range. */
const limitBefore =
  /(?:[<>≤≥±~/]|\b(?:than|least|most|below|above|under|over|up to|between|from|max\.?|min\.?|maximum|minimum|\d\S*\s*\S{0,3}\s*(?:to|or|and)))\s*$/iu;
const limitAfter = /^\s*(?:(?:to|or|and|–|—|-|\/|…)\s*(?:[<>~]?\d|more|less|so\b|higher|lower|above|below)|[±])/iu;

/** The values that a sentence states for references beside them; none where two readings are possible. */
export function valuesInSentence(sentence: string, known: KnownThings): StatedValue[] {
  const quantities = findQuantities(sentence);
  const kinds = quantities.map(({ quantity }) => quantity.kind);
  if (quantities.length === 0 || otherTalk.test(sentence)) return [];
  const groups = refGroups(sentence, known);
  const stated: StatedValue[] = [];
  for (const found of quantities) {
    if (isLimit(found, sentence)) continue;
    const isOnly = kinds.filter((kind) => kind === found.quantity.kind).length === 1;
    const beside = groupsBeside(found, sentence, groups, isOnly);
    const [nearest, next] = beside;
    // Where one value may belong to either side, the order of names and values is not certain for any of them.
    if (nearest !== undefined && nearest.looseness === next?.looseness) return [];
    if (nearest !== undefined) stated.push(statedOf(found, nearest.group));
  }
  return stated;
}

function isLimit({ start, end }: FoundQuantity, sentence: string): boolean {
  return limitBefore.test(sentence.slice(0, start)) || limitAfter.test(sentence.slice(end));
}

interface Beside {
  readonly group: RefGroup;
  /** How far the words between hold the two apart: brackets and blanks bind closer than a comma. */
  readonly looseness: number;
}

/** The references right before and right after a value that it can be the value of, the nearer first. */
function groupsBeside(
  { quantity, start, end }: FoundQuantity,
  sentence: string,
  groups: readonly RefGroup[],
  isOnly: boolean,
): Beside[] {
  const left = groups.findLast((group) => group.end <= start);
  const right = groups.find((group) => group.start >= end);
  const sides = [
    { group: left, gap: sentence.slice(left?.end ?? start, start), words: after },
    { group: right, gap: sentence.slice(end, right?.start ?? end), words: before },
  ];
  return sides
    .flatMap(({ group, gap, words }): Beside[] => {
      if (group === undefined || !fits(group, quantity) || !words.test(gap)) return [];
      const looseness = loosenessOf(gap);
      if (speaksForAll(group, gap, sentence)) return [{ group, looseness }];
      return isOnly ? [{ group: nearestOf(group, group === left), looseness }] : [];
    })
    .sort((a, b) => a.looseness - b.looseness);
}

function statedOf({ quantity, start, end }: FoundQuantity, group: RefGroup): StatedValue {
  return { refs: group.refs, quantity, start: Math.min(group.start, start), end: Math.max(group.end, end) };
}

function fits(group: RefGroup, quantity: Quantity): boolean {
  return group.refs.every((ref) => valueKind(ref) === quantity.kind);
}

/** 'R1 and R2 (10 kΩ)' may mean R2 alone; a range, a colon or a word such as 'both' leaves no doubt. */
function speaksForAll(group: RefGroup, gap: string, sentence: string): boolean {
  return (
    group.refs.length === 1 || group.isRange || isForAll.test(gap) || pluralBefore.test(sentence.slice(0, group.start))
  );
}

/** The one reference that a value beside a group is stated for in every reading: the last before it, the first after. */
function nearestOf(group: RefGroup, isBefore: boolean): RefGroup {
  return { ...group, refs: group.refs.slice(isBefore ? -1 : 0, isBefore ? undefined : 1) };
}

function loosenessOf(gap: string): number {
  if (/[)\]]/u.test(gap)) return 3;
  return gap.includes(',') ? 2 : /[([:=]|\b(?:is|are)\b/u.test(gap) ? 0 : 1;
}
