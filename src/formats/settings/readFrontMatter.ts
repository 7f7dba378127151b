import type { Problem } from '#core/problem.ts';
import type { Settings } from '#core/settings.ts';
import type { SourceText } from '#core/sourceText.ts';
import { readEntries } from './readEntries.ts';
import { readYaml } from './yamlRecord.ts';

/** Settings at the head of a Markdown file. `end` is the offset after the line that closes them. */
export interface FrontMatter {
  readonly settings: Partial<Settings>;
  readonly end: number;
  readonly problems: Problem[];
}

/**
 * Reads settings between two lines of `---` at the very start of a Markdown file. Null where there are none: a rule
 * followed by prose is no front matter. Site generators keep their own keys there, with values of any form, so what is
 * unknown or of another form is passed over without a word.
 */
export function readFrontMatter(source: SourceText): FrontMatter | null {
  const match = /^---[ \t]*(?:\r\n|\r|\n)/.exec(source.text);
  const close = match === null ? null : closingLine(source.text, match[0].length);
  if (match === null || close === null) return null;
  const head = source.text.slice(match[0].length, close.start);
  const record = readYaml(source, [match[0].length, close.start]);
  // Prose between two rules can look like damaged settings; only what begins with a key was meant as such.
  if (record.problems.length > 0 && !/^(?:#.*[\r\n]+)*[\w-]+[ \t]*:/.test(head)) return null;
  if (record.entries === null)
    return record.isEmpty ? { settings: {}, end: close.end, problems: record.problems } : null;
  const { settings } = readEntries(record.reader, record.entries, source.file);
  return { settings, end: close.end, problems: record.problems };
}

function closingLine(text: string, from: number): { start: number; end: number } | null {
  const line = /(^|\n|\r)(?:---|\.\.\.)[ \t]*(?:\r\n|\r|\n|$)/g;
  line.lastIndex = from - 1;
  const match = line.exec(text);
  return match === null ? null : { start: match.index + (match[1]?.length ?? 0), end: line.lastIndex };
}
