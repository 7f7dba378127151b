import type { Change } from '#core/change.ts';
import type { Key } from '#core/key.ts';
import type { Span } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { placeOf, type SourceText, spanOfLine } from '#core/sourceText.ts';

/** Reads `history.jsonl`: one change a line. A line that cannot be read is a problem; all others are read. */
export function readHistory(source: SourceText): { changes: Change[]; problems: Problem[] } {
  const changes: Change[] = [];
  const problems: Problem[] = [];
  for (let line = 1; line <= source.lineStarts.length; line++) {
    const span = spanOfLine(source, line);
    const text = source.text.slice(span[0], span[1]);
    if (text.trim() === '') continue;
    const change = parseChange(text);
    if (change !== null) changes.push(change);
    else problems.push(unreadable(source, span));
  }
  return { changes, problems };
}

/** One line of `history.jsonl`, without its end. */
export function formatChange({ key, digest, firstSeen }: Change): string {
  return JSON.stringify({ key, digest, firstSeen });
}

function parseChange(text: string): Change | null {
  const raw = parseJson(text);
  if (typeof raw !== 'object' || raw === null) return null;
  const { key, digest, firstSeen } = raw as Record<string, unknown>;
  if (!isKey(key) || typeof digest !== 'string' || typeof firstSeen !== 'string') return null;
  return isInstant(firstSeen) ? { key, digest, firstSeen } : null;
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Any subject: a later version may record kinds that this one does not know. */
function isKey(value: unknown): value is Key {
  return typeof value === 'string' && /^[a-z][a-z-]*:./s.test(value);
}

function isInstant(text: string): boolean {
  return /^\d{4}-\d\d-\d\d(T[\d:.]+(Z|[+-]\d\d:\d\d)?)?$/.test(text) && !Number.isNaN(Date.parse(text));
}

function unreadable(source: SourceText, span: Span): Problem {
  const isTorn = span[1] === source.text.length;
  return {
    place: placeOf(source, span),
    message: isTorn
      ? 'The last line of the history is incomplete: it was expected to be a whole record with key, digest and date.'
      : 'This line of the history was expected to be a record with key, digest and date.',
    remedy: 'Delete the line. The tool notes the fact again, with the date on which it next sees it.',
  };
}
