import type { Hash, Path, Span, TextPlace } from './place.ts';

/** How the bytes of a text file spell characters. */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** A text file as read: enough to write it back byte for byte. `text` holds no byte order mark. */
export interface SourceText {
  readonly file: Path;
  readonly text: string;
  readonly encoding: Encoding;
  readonly bom: boolean;
  readonly hash: Hash;
  /** Offset of each line's first character; the first entry is 0. LF, CRLF and CR end a line. */
  readonly lineStarts: readonly number[];
}

/** Offsets at which lines begin. LF, CRLF and a lone CR end a line. */
export function lineStartsOf(text: string): number[] {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
  }
  return starts;
}

/** The place of a span, with line and column from 1 and the words themselves. */
export function placeOf(source: SourceText, span: Span): TextPlace {
  const line = lineIndexAt(source.lineStarts, span[0]);
  return {
    kind: 'text',
    file: source.file,
    span,
    line: line + 1,
    column: span[0] - (source.lineStarts[line] ?? 0) + 1,
    quote: source.text.slice(span[0], span[1]),
  };
}

/** The span of a line without its line end; `line` counts from 1. An absent line gives the end of the text. */
export function spanOfLine(source: SourceText, line: number): Span {
  const start = source.lineStarts[line - 1] ?? source.text.length;
  let end = source.lineStarts[line] ?? source.text.length;
  while (end > start && (source.text[end - 1] === '\n' || source.text[end - 1] === '\r')) end--;
  return [start, end];
}

function lineIndexAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}
