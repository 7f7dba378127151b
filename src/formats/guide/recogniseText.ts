import type { SourceText } from '#core/sourceText.ts';
import type { Section } from '#core/step.ts';
import { type Block, plainText } from '#core/text.ts';
import { recogniseLicence } from '../licences/recogniseLicence.ts';
import { readLog } from '../log/readLog.ts';
import { readWiringTable } from '../wiring/readWiring.ts';
import { nameOfSection } from './nameOfSection.ts';
import { type GuideOptions, readGuide } from './readGuide.ts';
import { tablesOf } from './sectionLists.ts';
import { countTelling } from './stepWording.ts';
import { wordsOfBlocks } from './wordsOfBlocks.ts';

export type TextKind = 'guide' | 'log' | 'parts' | 'tools' | 'readme' | 'licence' | 'prose';

export interface TextRecognised {
  readonly kind: TextKind;
  /** From 0 to 1; comparable between texts of one kind. */
  readonly score: number;
  /** What it was recognised by. */
  readonly why: string;
  /** Sections that list parts, tools or connections. */
  readonly sections: readonly { readonly slug: string; readonly role: 'parts' | 'tools' | 'wiring' }[];
}

/**
 * What a Markdown or plain text is, by its content. `fileExists` finds the pictures that it shows; it decides nothing,
 * but the text need not be read anew in its role then.
 */
export function recogniseText(source: SourceText, fileExists: GuideOptions['fileExists']): TextRecognised {
  const plain = { sections: [] };
  const licence = looksLikeLicence(source) ? recogniseLicence(source.text) : null;
  if (licence !== null) return { ...plain, kind: 'licence', score: 1, why: `the text of ${licence}` };
  const { notes } = readLog(source);
  const dated = notes.filter(({ at }) => at !== null);
  const { instructions } = readGuide([source], { fileExists });
  const steps = instructions.sections.filter(({ role }) => role === 'step');
  const lists = listSections(instructions.sections);
  const own = [
    ...lists.map(({ section, role }) => ({ slug: section.id, role })),
    ...wiringSections(instructions.sections, source).map(({ id }) => ({ slug: id, role: 'wiring' as const })),
  ];
  const withFacts = steps.filter(({ facts }) => facts.length > 0).length;
  if (dated.length >= 2 && withFacts === 0 && dated.length * 2 >= steps.length) {
    return { ...plain, kind: 'log', score: share(dated.length), why: `${dated.length} dated notes` };
  }
  if (steps.length > 0) {
    return { kind: 'guide', score: guideScore(steps), why: whyGuide(steps, withFacts), sections: own };
  }
  const only = lists[0];
  if (only !== undefined && isMostOf(only.section, source)) {
    return { kind: only.role, score: 0.5, why: `a list under the heading '${only.section.heading}'`, sections: own };
  }
  if (/(?:^|\/)readme(?:\.[^/]*)?$/i.test(source.file)) {
    return { kind: 'readme', score: 0.5, why: 'by its name', sections: own };
  }
  return { kind: 'prose', score: 0, why: 'no steps, no dates, no list of parts or tools', sections: own };
}

/** A text that only names its licence is none: a licence says what it is in its first lines, or in its name. */
function looksLikeLicence({ file, text }: SourceText): boolean {
  if (/(?:^|\/)(?:(?:un)?licen[cs]e|copying)/i.test(file)) return true;
  const lines = text.split(/[\r\n]+/).filter((line) => line.trim() !== '');
  return /licen[cs]e|copyright|creative commons|permission is hereby/i.test(lines.slice(0, 2).join(' '));
}

/** A guide that declares facts comes before any that does not; then steps with pictures and words that tell what to do count. */
function guideScore(steps: readonly Section[]): number {
  const weights = steps.map(({ facts, pictures, blocks }) => {
    if (facts.length > 0) return 2;
    return 0.25 + (pictures.length > 0 ? 0.5 : 0) + (countTelling(wordsOfBlocks(blocks)) > 0 ? 0.5 : 0);
  });
  const told = share(weights.reduce((sum, weight) => sum + weight, 0)) / 2;
  return steps.some(({ facts }) => facts.length > 0) ? 0.5 + told : told;
}

/** 0 for none, 0.5 for three, towards 1 for many. */
function share(count: number): number {
  return count / (count + 3);
}

function whyGuide(steps: readonly Section[], withFacts: number): string {
  const first = `'${steps[0]?.heading ?? ''}'`;
  const facts = withFacts > 0 ? `, ${withFacts} with facts` : '';
  return steps.length === 1 ? `one step, ${first}${facts}` : `${steps.length} steps from ${first} on${facts}`;
}

interface ListSection {
  readonly section: Section;
  readonly role: 'parts' | 'tools';
}

/** Sections named for parts or tools that hold a list or a table of them; of shop links alone they do not. */
function listSections(sections: readonly Section[]): ListSection[] {
  const found: ListSection[] = [];
  let above: { role: 'parts' | 'tools'; depth: number } | null = null;
  for (const section of sections) {
    const name = nameOfSection(section.heading);
    if (above !== null && section.depth <= above.depth) above = null;
    if (name === 'parts' || name === 'tools') above = { role: name, depth: section.depth };
    const role = name === 'parts' || name === 'tools' ? name : name === null ? (above?.role ?? null) : null;
    if (role !== null && section.role !== 'step' && section.blocks.some(isListing)) found.push({ section, role });
  }
  return found;
}

/** Sections with a table whose rows join pins. */
function wiringSections(sections: readonly Section[], source: SourceText): Section[] {
  return sections.filter((section) =>
    tablesOf(section, source).some((table) => (readWiringTable(source, table)?.connections.length ?? 0) > 0),
  );
}

function isListing(block: Block): boolean {
  if (block.kind === 'table') return block.rows.length > 0;
  if (block.kind !== 'list' || block.items.length < 2) return false;
  const bare = block.items.filter(({ blocks: [first] }) => first?.kind === 'paragraph' && isBareLink(first)).length;
  return bare * 2 <= block.items.length;
}

function isBareLink(paragraph: Extract<Block, { kind: 'paragraph' }>): boolean {
  const other = paragraph.children.filter(({ kind }) => kind !== 'link');
  return other.length < paragraph.children.length && !/[\p{L}\p{N}]/u.test(plainText(other));
}

function isMostOf(section: Section, source: SourceText): boolean {
  const last = section.blocks.at(-1)?.place.span[1] ?? 0;
  const first = section.blocks[0]?.place.span[0] ?? 0;
  return (last - first) * 2 >= source.text.trim().length;
}
