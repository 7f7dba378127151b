import type { Build } from '#core/build.ts';
import type { Place } from '#core/place.ts';
import { maskUnread } from './maskUnread.ts';
import { proseOf } from './proseOf.ts';

/** What the guide and the pages beside it say, code and comments left out. */
export function proseWords(build: Build): string {
  return proseOf(build)
    .map((source) => maskUnread(source))
    .join('\n');
}

/** Whether the guide is written out far enough that an omission is what it lacks: three steps that say something. */
export function isWrittenOut({ instructions }: Build): boolean {
  const told = instructions.sections.filter(
    ({ role, blocks, facts }) => role === 'step' && blocks.length + facts.length > 0,
  );
  return told.length >= 3;
}

/** The title of the guide, else its file: where a stranger would look for what it says of itself. */
export function frontOf({ instructions: { sections }, files }: Build): Place {
  const [first] = sections;
  if (first === undefined) return { kind: 'file', file: files[0]?.path ?? '.' };
  return first.place.quote === '' ? { kind: 'file', file: first.file } : first.place;
}
