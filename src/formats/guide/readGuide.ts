import { digestOf } from '#core/digest.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { remember, rememberFor } from '#core/remember.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import type { Instructions, Section } from '#core/step.ts';
import { uniqueSlug } from '#notation/names.ts';
import { type FrontMatter, readFrontMatter } from '../settings/readFrontMatter.ts';
import { assignRoles, type Outline } from './assignRoles.ts';
import { nameOfSection, withoutNumber } from './nameOfSection.ts';
import { type OpenedSection, openSections } from './openSections.ts';
import { picturesOf } from './picturesOf.ts';
import { type FactList, readFactList } from './readFactList.ts';
import { countTelling } from './stepWording.ts';
import { wordsOfBlocks } from './wordsOfBlocks.ts';

export { listItemsOf, tablesOf } from './sectionLists.ts';

export interface GuideOptions {
  /** Depth of the headings that open steps; found by looking where it is not given. */
  readonly stepDepth?: number | null;
  /** The path as spelled on disk where the folder holds just that file; null otherwise. */
  readonly fileExists: FileFinder;
}

type FileFinder = (path: Path) => Path | null;

/** Reads the guide's text over all its files, in the order given. Never throws: what is odd becomes a problem. */
export function readGuide(
  sources: readonly SourceText[],
  options: GuideOptions,
): { instructions: Instructions; problems: Problem[] } {
  const pages = sources.map(pagesBy(options.fileExists));
  const opened = pages.flatMap(({ sections }) => sections);
  const parents = parentsOf(opened);
  const outlines = opened.map((section, index) => ({ ...section.outline, parent: parents[index] ?? null }));
  const roles = assignRoles(outlines, options.stepDepth ?? null);
  const ids = idsOf(opened, parents);
  const problems: Problem[] = [];
  const sections = opened.map((section, index): Section => {
    const isStep = roles[index] === 'step';
    const list = isStep ? section.factList : null;
    problems.push(...(list?.problems ?? []));
    const at = list?.complete ? section.firstList?.at : undefined;
    const blocks = section.blocks.filter((_, block) => block !== at);
    return {
      id: ids[index] ?? '',
      heading: section.heading,
      depth: section.depth,
      parents: ancestorsOf(index, parents).map((above) => opened[above]?.heading ?? ''),
      role: roles[index] ?? 'prose',
      file: section.source.file,
      place: placeOf(section.source, section.words),
      blocks,
      pictures: [...section.headingPictures, ...picturesOf(blocks)],
      facts: list?.facts ?? [],
      signature: section.signature,
    };
  });
  return {
    instructions: {
      title: titleOf(opened, sources[0]) ?? pages.find(({ front }) => front !== null)?.front?.settings.title ?? null,
      sections,
    },
    problems,
  };
}

/** A section with what can be told of it by itself. */
interface LoneSection extends OpenedSection {
  readonly factList: FactList | null;
  readonly outline: Omit<Outline, 'parent'>;
  readonly signature: string;
}

interface Page {
  readonly front: FrontMatter | null;
  readonly sections: readonly LoneSection[];
}

/** A text is looked into to tell its role and then read in that role, and read again while others change. */
const pagesBy = rememberFor((fileExists: FileFinder) =>
  rememberFor((source: SourceText): Page => {
    const front = readFrontMatter(source);
    const opened = openSections(source, front?.end ?? 0, { fileExists, pictureRoots: [] });
    return { front, sections: opened.map(loneSection) };
  }),
);

function loneSection(section: OpenedSection): LoneSection {
  const { firstList, source, content } = section;
  const factList = firstList === null ? null : readFactList(firstList.node, firstList.shift, source);
  const signature = signatureOf(source.text.slice(...content));
  return { ...section, factList, outline: outlineOf(section, factList), signature };
}

const signatureOf = remember((text) => digestOf(text.replace(/\s+/g, ' ').trim()));

/** The first heading of the first file, unless it only greets or says what kind of page it is. */
function titleOf(opened: readonly OpenedSection[], first: SourceText | undefined): string | null {
  const heading = opened.find(({ depth, source }) => depth === 1 && source === first)?.heading ?? null;
  if (heading === null || nameOfSection(heading) !== null || greetings.test(heading)) return null;
  return heading;
}

const greetings = /^(?:welcome|home|index|start(?: here)?|read ?me|getting started|overview|introduction)\W*$/i;

/** The index of the heading above each section, within its file. */
function parentsOf(opened: readonly OpenedSection[]): (number | null)[] {
  let above: number[] = [];
  return opened.map((section, index) => {
    if (opened[index - 1]?.source !== section.source) above = [];
    while ((opened[above.at(-1) ?? -1]?.depth ?? 0) >= section.depth && above.length > 0) above.pop();
    const parent = above.at(-1) ?? null;
    if (section.depth > 0) above.push(index);
    return parent;
  });
}

/** Indices of the headings above a section, outermost first. */
function ancestorsOf(index: number, parents: readonly (number | null)[]): number[] {
  const above: number[] = [];
  for (let at = parents[index] ?? null; at !== null; at = parents[at] ?? null) above.unshift(at);
  return above;
}

function outlineOf(section: OpenedSection, list: FactList | null): Omit<Outline, 'parent'> {
  const labels = list?.complete ? list.facts.map(({ label }) => label) : [];
  const isWork = labels.some((label) => !['danger', 'warning', 'caution', 'notice'].includes(label));
  return {
    heading: section.heading,
    depth: section.depth,
    pictures: picturesOf(section.blocks).length,
    told: countTelling(wordsOfBlocks(section.blocks)),
    facts: labels.length === 0 ? 'none' : isWork ? 'work' : 'cautions',
  };
}

/** Slugs of the headings without their numbers; text before any heading takes its file's name, after all others. */
function idsOf(opened: readonly OpenedSection[], parents: readonly (number | null)[]): string[] {
  const taken = new Set<string>();
  const ids = opened.map((section, index) => {
    const parent = opened[parents[index] ?? -1];
    if (section.depth === 0) return '';
    const above = parent === undefined ? stemOf(section.source.file) : withoutNumber(parent.heading);
    return take(uniqueSlug(withoutNumber(section.heading), taken, above), taken);
  });
  return ids.map((id, index) => {
    const section = opened[index];
    return section?.depth === 0 ? take(uniqueSlug(stemOf(section.source.file), taken, 'opening'), taken) : id;
  });
}

function take(id: string, taken: Set<string>): string {
  taken.add(id);
  return id;
}

function stemOf(file: Path): string {
  return (file.split('/').at(-1) ?? file).replace(/\.[^.]*$/, '');
}
