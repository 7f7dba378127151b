import type { Span, TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { placeOf, type SourceText, spanOfLine } from '#core/sourceText.ts';
import { openingDate } from './openingDate.ts';

/** One dated note with its labelled lines. */
export interface DatedNote<Field extends string> {
  /** ISO 8601 date or date and time; null where none is given. */
  readonly at: string | null;
  /** What is said besides the labelled lines. */
  readonly text: string;
  readonly filled: Readonly<Partial<Record<Field, string>>>;
  readonly place: TextPlace;
}

/**
 * Reads dated notes. A heading, a list item or a paragraph that begins with a date opens a note; lines such as
 * `mistake: …` fill those of its `fields` (a repeated field gains a line), everything else is its text.
 */
export function readNotes<Field extends string>(
  source: SourceText,
  fields: readonly Field[],
): { notes: DatedNote<Field>[]; problems: Problem[] } {
  const problems: Problem[] = [];
  const drafts: Draft<Field>[] = [draftFrom({ by: 'heading', at: null, words: '', misdated: false }, 0, fields)];
  let fence: string | null = null;
  let afterBlank = true;
  for (let line = 1; line <= source.lineStarts.length; line++) {
    const span = spanOfLine(source, line);
    const text = source.text.slice(...span);
    const marks = /^\s*(`{3,}|~{3,})/.exec(text)?.[1];
    const draft = drafts[drafts.length - 1];
    const opening = fence === null ? openingOf(text, afterBlank || draft?.by === 'line') : null;
    if (fence === null && marks !== undefined) fence = marks;
    else if (fence !== null && marks?.startsWith(fence)) fence = null;
    if (opening !== null) drafts.push(draftFrom(opening, span[0], fields));
    else if (draft !== undefined) addLine(draft, text, fence !== null, fields);
    if (opening?.misdated) problems.push(misdated(span, source));
    afterBlank = text.trim() === '';
  }
  const notes = drafts.flatMap((draft, index) => noteFrom(draft, drafts[index + 1]?.start, source));
  return { notes, problems };
}

interface Opening {
  /** What kind of line it is: a plain one makes the next plain ones count without a blank line between. */
  readonly by: 'heading' | 'item' | 'line';
  readonly at: string | null;
  /** Words beside the date. */
  readonly words: string;
  readonly misdated: boolean;
}

interface Draft<Field extends string> {
  readonly by: Opening['by'];
  readonly at: string | null;
  /** Words of an undated heading: alone they are no note. */
  readonly heading: string;
  readonly start: number;
  readonly lines: string[];
  readonly filled: Partial<Record<Field, string>>;
}

function openingOf(line: string, mayBePlain: boolean): Opening | null {
  const heading = /^ {0,3}#{1,6}[ \t]+(.*?)[ \t]*#*[ \t]*$/.exec(line)?.[1];
  const item = /^ {0,3}(?:[-*+]|\d{1,9}[.)])[ \t]+(.*)$/.exec(line)?.[1];
  if (heading === undefined && item === undefined && !mayBePlain) return null;
  const by = heading !== undefined ? 'heading' : item !== undefined ? 'item' : 'line';
  const words = (heading ?? item ?? line.trim()).replace(/^[*_[(]+/, '');
  const date = openingDate(words);
  if (date === null) return heading === undefined ? null : { by, at: null, words: heading, misdated: false };
  const rest = words.slice(date.length).replace(/^[\s*_\]):.,–—-]+/, '');
  return { by, at: date.at, words: date.at === null ? words : rest, misdated: date.at === null };
}

function draftFrom<Field extends string>(
  { by, at, words }: Opening,
  start: number,
  fields: readonly Field[],
): Draft<Field> {
  const isHeading = by === 'heading' && at === null;
  const draft: Draft<Field> = { by, at, heading: isHeading ? words : '', start, lines: [], filled: {} };
  if (!isHeading && words !== '') addLine(draft, words, false, fields);
  return draft;
}

function addLine<Field extends string>(
  draft: Draft<Field>,
  line: string,
  inCode: boolean,
  fields: readonly Field[],
): void {
  const match = /^\s*(?:[-*+]\s+)?(?:\*\*|__)?([A-Za-z]+)(?:\*\*|__)?\s*[:：](?:\*\*|__)?\s*(.*?)\s*$/.exec(line);
  const field = fields.find((name) => name === match?.[1]?.toLowerCase());
  if (inCode || field === undefined) draft.lines.push(line);
  else {
    const before = draft.filled[field];
    draft.filled[field] = before === undefined ? (match?.[2] ?? '') : `${before}\n${match?.[2] ?? ''}`;
  }
}

/** None where nothing is said, as under the title of the log. */
function noteFrom<Field extends string>(
  draft: Draft<Field>,
  next: number | undefined,
  source: SourceText,
): DatedNote<Field>[] {
  const isSaid = Object.keys(draft.filled).length > 0 || draft.lines.some((line) => line.trim() !== '');
  if (draft.at === null && !isSaid) return [];
  const words = source.text.slice(draft.start, next ?? source.text.length).trimEnd();
  const text = [draft.heading, ...draft.lines]
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
  const place = placeOf(source, [draft.start, draft.start + words.length]);
  return [{ at: draft.at, text, filled: draft.filled, place }];
}

function misdated(span: Span, source: SourceText): Problem {
  return {
    place: placeOf(source, span),
    message:
      'This looks like a date, but no calendar has that day or it can be read in two ways; the note stays undated.',
    remedy: 'Write it as year-month-day, such as 2026-03-09.',
  };
}
