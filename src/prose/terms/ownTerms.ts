import type { Build } from '#core/build.ts';
import type { Section } from '#core/step.ts';
import type { TermMention } from '#core/term.ts';
import type { Block } from '#core/text.ts';
import { maskMarkup } from '../mentions/maskMarkup.ts';
import { spokenRows } from '../mentions/spokenTexts.ts';
import { placeInside } from '../placeInside.ts';

const glossary =
  /^(?:(?:a |short |small |the )?glossary|words(?: (?:we use|used(?: here)?|to know))?|terms|terminology|definitions|vocabulary|jargon|glossar|glossaire|glosario)\b/i;

/** The maker's own glossary: list items and lines such as 'Flux: …', and rows of a table with word and meaning. */
export function ownTerms(build: Build): TermMention[] {
  const sections = build.instructions.sections.filter(({ heading, file }) => isGlossary(heading, file));
  const rows = spokenRows(build).filter(({ cells }) =>
    sections.some((section) => holds(section, build, cells[0]?.place.span[0] ?? -1, cells[0]?.place.file)),
  );
  return [
    ...sections.flatMap(({ blocks }) => lines(blocks)).flatMap(termOf),
    ...rows.flatMap(({ cells: [word, meaning] }): TermMention[] =>
      word === undefined || meaning === undefined || word.words.trim() === ''
        ? []
        : [
            {
              term: word.words.trim(),
              meaning: meaning.words.trim(),
              told: 'beforehand',
              step: null,
              place: word.place,
            },
          ],
    ),
  ];
}

function isGlossary(heading: string, file: string): boolean {
  return glossary.test(heading.trim()) || /(?:^|\/)(?:glossary|glossar|glossaire)\.[a-z]+$/i.test(file);
}

function holds(section: Section, { instructions: { sections } }: Build, at: number, file: string | undefined): boolean {
  const next = sections[sections.indexOf(section) + 1];
  const end = next === undefined || next.file !== section.file ? Number.POSITIVE_INFINITY : next.place.span[0];
  return file === section.file && at >= section.place.span[0] && at < end;
}

function lines(blocks: readonly Block[]): Block[] {
  return blocks.flatMap((block): Block[] =>
    block.kind === 'list'
      ? block.items.flatMap((item) => lines(item.blocks))
      : block.kind === 'paragraph'
        ? [block]
        : [],
  );
}

function termOf({ place }: Block): TermMention[] {
  const words = maskMarkup(place.quote);
  const match = /^([\s]*)([\p{L}\p{N}][^:–—=]{0,40}?)\s*(?::|–|—|=|\s-\s|\s(?:is|are|means)\s)\s*(\S.{3,})$/su.exec(
    words,
  );
  const [, lead = '', term, meaning] = match ?? [];
  if (term === undefined || meaning === undefined) return [];
  const at = placeInside(place, lead.length, lead.length + term.length);
  return [{ term, meaning: meaning.trim(), told: 'beforehand', step: null, place: at }];
}
