import { assert } from '#core/failure.ts';
import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { Section } from '#core/step.ts';
import { type Block, plainText } from '#core/text.ts';

/** One cell of a table: its words without markup, and the span of its source. */
export interface TableCell {
  readonly text: string;
  readonly span: Span;
}

export interface SectionTable {
  readonly header: readonly TableCell[];
  readonly rows: readonly (readonly TableCell[])[];
  /** The whole table. */
  readonly span: Span;
}

/** The items of a section's lists at the top level, each the span of its first paragraph. */
export function listItemsOf(section: Section, source: SourceText): { span: Span }[] {
  assert(section.file === source.file, 'a section is read from its own file');
  return section.blocks.flatMap((block) =>
    block.kind === 'list'
      ? block.items.flatMap(({ blocks }) => (blocks[0] === undefined ? [] : [{ span: blocks[0].place.span }]))
      : [],
  );
}

/** The section's tables at the top level, cell by cell. */
export function tablesOf(section: Section, source: SourceText): SectionTable[] {
  assert(section.file === source.file, 'a section is read from its own file');
  return section.blocks.flatMap((block) => (block.kind === 'table' ? [tableOf(block, source)] : []));
}

function tableOf(block: Extract<Block, { kind: 'table' }>, source: SourceText): SectionTable {
  const [header = [], , ...rows] = linesIn(block.place.span, source).map((line) => cellSpans(line, source.text));
  return {
    header: header.flatMap((span, column) => cellOf(block.header[column], span)),
    rows: block.rows.map((row, index) => (rows[index] ?? []).flatMap((span, column) => cellOf(row[column], span))),
    span: block.place.span,
  };
}

function cellOf(nodes: Parameters<typeof plainText>[0] | undefined, span: Span): TableCell[] {
  return nodes === undefined ? [] : [{ text: plainText(nodes).trim(), span }];
}

function linesIn([start, end]: Span, source: SourceText): Span[] {
  const lines: Span[] = [];
  for (const match of source.text.slice(start, end).matchAll(/[^\r\n]+/g)) {
    lines.push([start + match.index, start + match.index + match[0].length]);
  }
  return lines;
}

/** GFM 4.10: cells end at a bar that no backslash precedes, even inside code; blanks around them do not count. */
function cellSpans([start, end]: Span, text: string): Span[] {
  const bars: number[] = [];
  for (let at = start; at < end; at++) {
    if (text[at] === '\\') at++;
    else if (text[at] === '|') bars.push(at);
  }
  const edges = [start - 1, ...bars, end];
  const spans = edges.slice(1).map((edge, index): Span => trimmed((edges[index] ?? start) + 1, edge, text));
  const isEmpty = (span: Span | undefined) => span !== undefined && span[0] === span[1];
  if (isEmpty(spans[0])) spans.shift();
  if (isEmpty(spans.at(-1)) && text.slice(start, end).trimEnd().endsWith('|')) spans.pop();
  return spans;
}

function trimmed(start: number, end: number, text: string): Span {
  const words = text.slice(start, end);
  const from = start + words.length - words.trimStart().length;
  return from >= end ? [end, end] : [from, from + words.trim().length];
}
