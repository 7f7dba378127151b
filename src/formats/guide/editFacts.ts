import type { Edit } from '#core/edit.ts';
import { assert } from '#core/failure.ts';
import { placeOf, type SourceText, spanOfLine } from '#core/sourceText.ts';
import type { FactLabel, Section } from '#core/step.ts';

export interface NewFact {
  readonly label: FactLabel;
  readonly value: string;
}

/**
 * Adds labelled facts to a step: below those it has, else as a new list right under its heading. Bullets and line
 * ends are those that the file uses.
 */
export function editFacts(source: SourceText, section: Section, facts: readonly NewFact[]): Edit {
  assert(section.file === source.file && section.depth > 0, 'facts go to a section with a heading, in its own file');
  const last = section.facts.at(-1);
  const change =
    facts.length === 0
      ? []
      : [last === undefined ? newList(source, section, facts) : more(source, last.place.line, facts)];
  return {
    file: source.file,
    base: source.hash,
    changes: change.map(({ at, text }) => ({ span: [at, at], text })),
    why: `Add facts to the step '${section.heading}'`,
  };
}

interface Insertion {
  readonly at: number;
  readonly text: string;
}

/** Below the last fact, and below the lines that belong to its item. */
function more(source: SourceText, lastLine: number, facts: readonly NewFact[]): Insertion {
  const opening = /^([ \t]*)([-*+]|\d{1,9}[.)])([ \t]+)/.exec(lineText(source, lastLine));
  const [lead = '- ', indent = '', marker = '-', gap = ' '] = opening ?? [];
  const items = facts.map((fact, index) => `${indent}${nextMarker(marker, index + 1)}${gap}${written(fact)}`);
  return afterLine(source, lastLineOfItem(source, lastLine, lead.length), items);
}

/** Lines right below go on with the item unless they open a block of their own; after a blank line only indented ones. */
function lastLineOfItem(source: SourceText, first: number, width: number): number {
  let last = first;
  for (let line = first + 1; line <= source.lineStarts.length; line++) {
    const text = lineText(source, line);
    const isIndented = text.length - text.trimStart().length >= width;
    if (text.trim() === '') continue;
    const goesOn =
      line === last + 1 && !/^ {0,3}(?:#{1,6}(?:\s|$)|>|```|~~~|<|[-*+]\s|\d{1,9}[.)]\s|[-*_]{3,})/.test(text);
    if (!isIndented && !goesOn) break;
    last = line;
  }
  return last;
}

function newList(source: SourceText, section: Section, facts: readonly NewFact[]): Insertion {
  const below = headingEnd(source, section);
  const isSpaced = lineText(source, below + 1).trim() === '';
  const hasMore = source.text.slice(spanOfLine(source, below)[1], contentEnd(source, section)).trim() !== '';
  const at = isSpaced && hasMore ? below + 1 : below;
  const [, indent = '', following] =
    /^\s*?([ \t]*)(?:([-*+])[ \t]|\S)/.exec(source.text.slice(spanOfLine(source, below)[1])) ?? [];
  const items = facts.map((fact) => `${bulletOf(source, following)}${gapBefore(indent)}${written(fact)}`);
  return afterLine(source, at, hasMore && lineText(source, at + 1).trim() !== '' ? [...items, ''] : items);
}

/** The last line of the heading: the line below its words where those are underlined. */
function headingEnd(source: SourceText, section: Section): number {
  const last = placeOf(source, [section.place.span[1], section.place.span[1]]).line;
  const isMarked = /^ {0,3}#/.test(lineText(source, section.place.line));
  return !isMarked && /^ {0,3}(?:=+|-+)[ \t]*$/.test(lineText(source, last + 1)) ? last + 1 : last;
}

function contentEnd(source: SourceText, section: Section): number {
  const last = section.blocks.at(-1);
  return last === undefined ? spanOfLine(source, headingEnd(source, section))[1] : last.place.span[1];
}

/** Text that is indented as far as an item's words would belong to that item, so the words stand further in. */
function gapBefore(indent: string): string {
  return ' '.repeat(Math.min(4, Math.max(1, indent.replaceAll('\t', '    ').length)));
}

/** The bullet that the file uses first, but never that of a list right below, which the new one would run into. */
function bulletOf(source: SourceText, below: string | undefined): string {
  const used = /^ {0,3}([-*+])[ \t]+\S/m.exec(source.text)?.[1] ?? '-';
  return used === below ? (used === '-' ? '*' : '-') : used;
}

function written({ label, value }: NewFact): string {
  return `${label.charAt(0).toUpperCase()}${label.slice(1)}: ${value.replace(/\s+/g, ' ').trim()}`;
}

function nextMarker(marker: string, steps: number): string {
  return marker.replace(/^\d+/, (number) => String(Number(number) + steps));
}

function afterLine(source: SourceText, line: number, lines: readonly string[]): Insertion {
  const lineEnd = /\r\n|\r|\n/.exec(source.text)?.[0] ?? '\n';
  const next = source.lineStarts[line];
  if (next === undefined) return { at: source.text.length, text: lines.map((text) => lineEnd + text).join('') };
  return { at: next, text: lines.map((text) => text + lineEnd).join('') };
}

function lineText(source: SourceText, line: number): string {
  return source.text.slice(...spanOfLine(source, line));
}
