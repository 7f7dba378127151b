import type { Action } from '#core/action.ts';
import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import type { Section, StepId } from '#core/step.ts';
import { sentencesOf } from '../mentions/sentencesOf.ts';
import { type SpokenText, spokenTexts } from '../mentions/spokenTexts.ts';
import { placeInside } from '../placeInside.ts';

/** A sentence of a step, with what tells how much it counts. */
export interface Saying {
  readonly text: string;
  /** `heading` weighs more than `prose`; the words of a picture weigh less. */
  readonly kind: 'heading' | 'prose' | 'picture';
  /** Work that the sentence tells the builder to do. */
  readonly work: readonly Action[];
  /** Work that it merely speaks of, or tells to leave. */
  readonly spoken: readonly Action[];
  /** True where it speaks of another time or place, or of what is not to be done. */
  readonly isAside: boolean;
  /** True where it speaks of what is left alone or lies elsewhere. */
  readonly isElsewhere: boolean;
  placeOf(from: number, to: number): TextPlace;
  /** Whether the word at an offset is a verb of the work. */
  isWork(from: number): boolean;
}

/** What each step says, sentence by sentence. */
export function stepTalk(build: Build, actions: readonly Action[]): Map<StepId, Saying[]> {
  const headings = new Map<string, Section>();
  for (const section of build.instructions.sections) headings.set(keyOf(section.file, section.place.span[0]), section);
  const byFile = actionsByFile(actions);
  const talk = new Map<StepId, Saying[]>();
  for (const spoken of spokenTexts(build)) {
    if (spoken.step === null) continue;
    const isHeading =
      headings.get(keyOf(spoken.place.file, spoken.place.span[0]))?.place.span[1] === spoken.place.span[1];
    const sayings = sayingsOf(spoken, isHeading, byFile.get(spoken.place.file) ?? []);
    talk.set(spoken.step, [...(talk.get(spoken.step) ?? []), ...sayings]);
  }
  return talk;
}

const elsewhere =
  /\b(?:still in|(?:stays?|remains?|leave|keep|is|are) (?:\w+ )?in (?:its|their|the) (?:bags?|packag\w+|tin)|not yet|is not part of|are not part of)\b/iu;
const aside =
  /\b(?:do not|don['’]t|never|without|instead of|rather than|previous(?:ly)?|earlier|later|next step|step before|last step|as before|as in the|already|not yet|will be|if (?:used|needed|fitted|required|present|applicable)|if you (?:have|want|prefer|use|are)|alternatively|for example|e\.g|such as|optional(?:ly)?|similar to|unlike|compared?)\b/iu;

function sayingsOf(spoken: SpokenText, isHeading: boolean, actions: readonly Action[]): Saying[] {
  const pictures = isHeading ? [] : picturesIn(spoken.place.quote);
  return sentencesOf(spoken.words).map(({ text, start }) => {
    const from = spoken.place.span[0] + start;
    const here = between(actions, from, from + text.length);
    const middle = start + text.length - text.trimStart().length;
    const isPicture = pictures.some(([first, last]) => middle >= first && middle < last);
    const verbs = new Set(here.filter(({ told }) => told !== 'mention').map(({ place }) => place.span[0] - from));
    return {
      text,
      kind: isHeading ? 'heading' : isPicture ? 'picture' : 'prose',
      work: here.filter(({ told }) => told === 'do'),
      spoken: here.filter(({ told }) => told !== 'do'),
      isAside: aside.test(text),
      isElsewhere: elsewhere.test(text),
      placeOf: (first, last) => placeInside(spoken.place, start + first, start + last),
      isWork: (at) => verbs.has(at),
    };
  });
}

function picturesIn(quote: string): [number, number][] {
  return [...quote.matchAll(/!\[[^\]]*\](?:\([^)]*\)|\[[^\]]*\])?/g)].map(({ index, 0: whole }) => [
    index,
    index + whole.length,
  ]);
}

function actionsByFile(actions: readonly Action[]): Map<string, Action[]> {
  const byFile = new Map<string, Action[]>();
  for (const action of actions) {
    const own = byFile.get(action.place.file);
    if (own === undefined) byFile.set(action.place.file, [action]);
    else own.push(action);
  }
  for (const own of byFile.values()) own.sort((a, b) => a.place.span[0] - b.place.span[0]);
  return byFile;
}

/** Those that stand between two offsets, out of a list in the order of the text. */
function between(actions: readonly Action[], from: number, to: number): Action[] {
  let low = 0;
  let high = actions.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((actions[middle]?.place.span[0] ?? 0) < from) low = middle + 1;
    else high = middle;
  }
  const found: Action[] = [];
  for (let at = low; at < actions.length; at++) {
    const action = actions[at];
    if (action === undefined || action.place.span[0] >= to) break;
    found.push(action);
  }
  return found;
}

function keyOf(file: string, at: number): string {
  return `${at} ${file}`;
}
