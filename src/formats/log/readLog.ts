import type { LogNote } from '#core/log.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import { readNotes } from './readNotes.ts';

const fields = ['mistake', 'cause', 'remedy', 'reading', 'step'] as const;

/** Reads the dated notes from the bench, with their lines of mistake, cause, remedy, reading and step. */
export function readLog(source: SourceText): { notes: LogNote[]; problems: Problem[] } {
  const { notes, problems } = readNotes(source, fields);
  return {
    notes: notes.map(({ at, text, filled, place }) => {
      const { mistake = null, cause = null, remedy = null, reading = null, step = null } = filled;
      return { at, text, mistake, cause, remedy, reading, step, file: source.file, place };
    }),
    problems,
  };
}
