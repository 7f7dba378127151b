import type { LogNote } from '#core/log.ts';
import type { StepId } from '#core/step.ts';
import type { TroublesBlock } from './guide.ts';
import { markOf, type StepMarks } from './stepMarks.ts';

/** The mistakes of the log by what was seen on the bench; null where it tells of none. */
export function composeTroubles(
  log: readonly LogNote[],
  marks: StepMarks,
  headings: ReadonlyMap<StepId, string>,
): TroublesBlock | null {
  const notes = log.filter((note) => note.mistake !== null);
  if (notes.length === 0) return null;
  return {
    kind: 'troubles',
    id: 'troubles',
    places: notes.map(({ place }) => place),
    rows: notes.map((note) => ({
      ...seenAndCause(note),
      remedy: note.remedy,
      reading: note.reading,
      step: note.step === null ? null : markOf(note.step, marks, headings),
    })),
  };
}

/** Where the note says what was seen, the mistake is its cause; else the mistake is all that was seen. */
function seenAndCause(note: LogNote): { symptom: string; cause: string | null } {
  const seen =
    note.text
      .split(/\n\s*\n/, 1)[0]
      ?.replace(/\s+/g, ' ')
      .trim() ?? '';
  if (seen === '') return { symptom: note.mistake ?? '', cause: note.cause };
  return { symptom: seen, cause: [note.mistake, note.cause].filter((text) => text !== null).join('. ') };
}
