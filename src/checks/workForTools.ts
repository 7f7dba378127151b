import type { Action } from '#core/action.ts';
import type { Judged } from '#core/assembled.ts';
import type { Place } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { StepId } from '#core/step.ts';
import { sentencesOf } from '#prose/mentions/sentencesOf.ts';
import type knowledge from './knowledge/tools.json';
import { holdsWord } from './listedTools.ts';

/** A tool of the trade, with the work that it does and the words that tell of it. */
export type WorkTool = (typeof knowledge.tools)[number];

/** Words of the guide that tell to do some work. */
export interface Work {
  readonly step: StepId | null;
  readonly words: string;
  readonly place: Place;
}

/** Where the guide tells a builder to do what the tool is for. */
export function workFor(judged: Judged, entry: WorkTool): readonly Work[] {
  return workBy(judged)(entry);
}

const workBy = rememberFor((judged: Judged) => rememberFor((entry: WorkTool) => workOf(judged, entry)));

function workOf(judged: Judged, entry: WorkTool): readonly Work[] {
  const told = judged.facts.actions
    .filter(({ kind, told: how, step }) => how === 'do' && step !== null && entry.work.includes(kind))
    .map((action): Work => ({ step: action.step, words: sentencesOfWork(judged)(action), place: action.place }))
    .filter(({ words }) => suits(words, entry.work.includes('screw') ? partsIn(judged, words) : '', entry));
  return entry.work.includes('measure') ? [...readingsOf(judged), ...told] : told;
}

/** What the list says of the parts whose references the words name: 'screw MP2 on' may mean a part with screws. */
function partsIn({ build }: Judged, words: string): string {
  const named = build.parts.filter(({ refs }) =>
    refs.some((ref) => holdsWord(words.toLowerCase(), [ref.toLowerCase()])),
  );
  return named.map(({ description }) => description.toLowerCase()).join('\n');
}

function suits(words: string, parts: string, entry: WorkTool): boolean {
  const plain = words.toLowerCase();
  const needs = 'with' in entry ? (entry.with ?? []) : [];
  const spares = 'without' in entry ? (entry.without ?? []) : [];
  // The verb itself is no object: 'screw the lid on' names no screw.
  const rest = plain.replace(/^\W*\p{L}+\s/u, ' ');
  return (needs.length === 0 || holdsWord(`${rest}\n${parts}`, needs)) && !holdsWord(plain, spares);
}

/** Readings that steps declare. */
function readingsOf({ build, facts }: Judged): Work[] {
  return build.instructions.sections.flatMap(({ id }) =>
    (facts.steps[id]?.measures ?? []).flatMap(({ value, places }) =>
      places.map((place) => ({ step: id, words: `Measure: ${value.text}`, place })),
    ),
  );
}

/** The sentence in which some work stands; several tools ask for the same. */
const sentencesOfWork = rememberFor((judged: Judged) => rememberFor((action: Action) => sentenceOf(judged, action)));

/** The sentence in which the work stands, as written. */
function sentenceOf({ build }: Judged, { place }: Action): string {
  const text = build.texts.get(place.file)?.text ?? '';
  const from = Math.max(text.lastIndexOf('\n\n', place.span[0]), 0);
  const end = text.indexOf('\n\n', place.span[1]);
  const block = text.slice(from, end < 0 ? text.length : end);
  const at = place.span[0] - from;
  const sentence = sentencesOf(block).find(({ start, text: words }) => start <= at && at < start + words.length);
  return (sentence?.text ?? place.quote).replace(/\s+/g, ' ').trim();
}
