import { type Section, type SignalWord, signalWords, type WrittenFact } from '#core/step.ts';
import { type Inline, plainText } from '#core/text.ts';
import { composeBody, type Drafting } from './composeBody.ts';
import type { BlockId, BodyBlock, SectionBlock } from './guide.ts';
import { headingRanks } from './headingRanks.ts';

/** Prose sections in their order, their headings ranked from `top` down. */
export function composeSections(sections: readonly Section[], top: number, drafting: Drafting): SectionBlock[] {
  const ranks = headingRanks(
    sections.map((section) => section.depth),
    top,
  );
  return sections.map((section, i) => composeSection(section, ranks[i] ?? top, drafting));
}

/** One section of the maker's prose under a heading of that rank. */
export function composeSection(section: Section, level: number, drafting: Drafting): SectionBlock {
  const id = drafting.targets.sections.get(section.id) ?? drafting.names.of('section', section.id);
  return {
    kind: 'section',
    id,
    places: [section.place],
    heading: section.heading || null,
    level,
    folded: false,
    troubleshooting: tellsOfTrouble(section),
    body: [
      ...section.facts.map((fact) => composeFact(fact, id, drafting)),
      ...composeBody(section.blocks, { parent: id, pictureOf: `Picture to ${section.heading}` }, drafting),
    ],
  };
}

function tellsOfTrouble({ heading, blocks }: Section): boolean {
  const tabled = blocks.some(({ kind, ...block }) => kind === 'table' && 'header' in block && isSymptom(block.header));
  return tabled || /\btroubles?(?:hooting)?\b|\b(?:does|do) ?n[o']t work\b|\bwhat went wrong\b/i.test(heading);
}

function isSymptom(header: readonly (readonly Inline[])[]): boolean {
  return /^(?:symptoms?|problem|fault|what you see)$/i.test(plainText(header[0] ?? []).trim());
}

/** Labelled facts outside a step drive nothing, but a reader must still be told. */
function composeFact(fact: WrittenFact, parent: BlockId, drafting: Drafting): BodyBlock {
  const told = { id: drafting.names.within(parent, fact.label, fact.value), places: [fact.place] };
  if (isSignalWord(fact.label)) return { kind: 'caution', ...told, word: fact.label, message: fact.value };
  const label = `${fact.label.charAt(0).toUpperCase()}${fact.label.slice(1)}: `;
  return {
    kind: 'paragraph',
    ...told,
    words: [
      { kind: 'strong', children: [{ kind: 'text', value: label }] },
      { kind: 'text', value: fact.value },
    ],
  };
}

function isSignalWord(label: WrittenFact['label']): label is SignalWord {
  return signalWords.some((word) => word === label);
}
