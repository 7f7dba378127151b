import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { Section, StepId } from '#core/step.ts';
import type { Block } from '#core/text.ts';
import { placeInside } from '../placeInside.ts';
import { maskMarkup } from './maskMarkup.ts';

/** A stretch of prose: words of the same length as the quote of their place, markup blanked. */
export interface SpokenText {
  readonly words: string;
  readonly place: TextPlace;
  readonly step: StepId | null;
}

/** A table row of the guide, cell by cell, with its heading cells. */
export interface SpokenRow {
  readonly header: readonly SpokenText[];
  readonly cells: readonly SpokenText[];
}

/** Headings, paragraphs, list items and captions of the guide; table cells are left to `spokenRows`. */
export const spokenTexts = rememberFor((build: Build): readonly SpokenText[] =>
  speakingSections(build).flatMap(textsOfSection),
);

/** The tables of the guide, row by row. */
export const spokenRows = rememberFor((build: Build): readonly SpokenRow[] =>
  speakingSections(build).flatMap(rowsOfSection),
);

/** What a section says before the first step. */
export interface SpokenSection {
  readonly section: Section;
  readonly texts: readonly SpokenText[];
  readonly rows: readonly SpokenRow[];
}

/** The sections before the first step, apart from lists of parts and tools; none where there is no step. */
export const spokenInFront = rememberFor((build: Build): readonly SpokenSection[] => {
  const sections = speakingSections(build);
  const first = sections.findIndex(({ role }) => role === 'step');
  return sections
    .slice(0, Math.max(first, 0))
    .map((section) => ({ section, texts: textsOfSection(section), rows: rowsOfSection(section) }));
});

function textsOfSection(section: Section): SpokenText[] {
  const step = section.role === 'step' ? section.id : null;
  const heading = section.depth === 0 ? [] : [spoken(section.place, step)];
  return [
    ...heading,
    ...leaves(section.blocks).flatMap((block) => (block.kind === 'table' ? [] : [spoken(block.place, step)])),
  ];
}

function rowsOfSection(section: Section): SpokenRow[] {
  const step = section.role === 'step' ? section.id : null;
  return leaves(section.blocks).flatMap((block) => (block.kind === 'table' ? rowsOf(block.place, step) : []));
}

/** A place's words with the markup blanked. */
export function spoken(place: TextPlace, step: StepId | null): SpokenText {
  return { words: maskMarkup(place.quote), place, step };
}

/** Lists of parts and tools are read as such, not as prose. */
function speakingSections(build: Build): Section[] {
  return build.instructions.sections.filter(({ role }) => role !== 'parts' && role !== 'tools');
}

/** Blocks that hold words themselves. */
function leaves(blocks: readonly Block[]): Block[] {
  return blocks.flatMap((block): Block[] => {
    if (block.kind === 'list') return block.items.flatMap((item) => leaves(item.blocks));
    if (block.kind === 'quote') return leaves(block.blocks);
    return block.kind === 'code' || block.kind === 'rule' ? [] : [block];
  });
}

function rowsOf(place: TextPlace, step: StepId | null): SpokenRow[] {
  const lines = [...place.quote.matchAll(/[^\r\n]+/g)].map((match) => cellsOf(match[0], match.index, place, step));
  const [header = [], , ...rows] = lines;
  return rows.map((cells) => ({ header, cells }));
}

/** Cells end at a bar that no backslash precedes. */
function cellsOf(line: string, from: number, place: TextPlace, step: StepId | null): SpokenText[] {
  const inner = line.replace(/^[\s>]*\|?/, (lead) => ' '.repeat(lead.length)).replace(/\|\s*$/, '');
  const cells: SpokenText[] = [];
  for (const match of inner.matchAll(/(?:\\.|[^|\\])+|(?<=\|)(?=\|)/g)) {
    const start = from + match.index + match[0].length - match[0].trimStart().length;
    cells.push(spoken(placeInside(place, start, Math.max(start, start + match[0].trim().length)), step));
  }
  return cells;
}
