import type { Erratum } from '#core/erratum.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import { readNotes } from './readNotes.ts';

const fields = ['step', 'part', 'editions', 'right', 'by', 'fixed'] as const;

/**
 * Reads errata: dated notes whose text says what is wrong, with lines `right:` (what holds instead), `step:`, `part:`,
 * `editions:` (which are affected), `by:` (who reported it) and `fixed:` (the edition that has it right).
 */
export function readErrata(source: SourceText): { errata: Erratum[]; problems: Problem[] } {
  const { notes, problems } = readNotes(source, fields);
  const errata = notes.flatMap(({ at, text, filled, place }): Erratum[] => {
    const { step = null, part = null, editions = null, right = null, by = null, fixed = null } = filled;
    if (at === null && right === null) return [];
    return [{ at, wrong: text, right, step, part, editions, by, fixed, file: source.file, place }];
  });
  return { errata, problems };
}
