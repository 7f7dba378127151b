import type { Assembled } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import type { Path, Place, TextPlace } from '#core/place.ts';
import type { ShotChoice } from '#core/shotChoice.ts';
import type { Section } from '#core/step.ts';
import { type BlockNames, createBlockNames } from './blockNames.ts';
import { composeBody, type Drafting } from './composeBody.ts';
import { composeClosing } from './composeClosing.ts';
import { glossesOf } from './composeGlosses.ts';
import { composeErrata, composeNotices } from './composeNotices.ts';
import { composeOpening } from './composeOpening.ts';
import { composeSections } from './composeSections.ts';
import { composeSummary, composeTotals } from './composeSummary.ts';
import { composePartRows, composeToolRows, composeWiringRows } from './composeTables.ts';
import { composeTroubles } from './composeTroubles.ts';
import { composeWork } from './composeWork.ts';
import { gatherCautions } from './gatherCautions.ts';
import type {
  BlockId,
  BodyBlock,
  CodeFileBlock,
  Guide,
  PageBlock,
  PartRow,
  PublishedFile,
  StepBlock,
  ToolRow,
  Words,
} from './guide.ts';
import { isWebAddress } from './links.ts';
import { plainWords } from './plainWords.ts';
import { type Regions, regionsOf } from './regions.ts';
import type { StepMarks } from './stepMarks.ts';

/** A source file as it may be published: credentials replaced, `withheld` of them. */
export interface PublishedCode {
  readonly path: Path;
  readonly language: string;
  readonly text: string;
  readonly withheld: number;
}

/** The guide of a build as one document. Nothing is guessed: what the maker did not say is left out. */
export function composeGuide(
  assembled: Assembled,
  context: { readonly code: readonly PublishedCode[]; readonly files?: readonly PublishedFile[] },
): Guide {
  const { build, facts, ledger } = assembled;
  const names = createBlockNames();
  const regions = regionsOf(build.instructions.sections);
  const marks = markSteps(regions.work, names);
  const code = context.code.map((file) => composeCodeFile(file, names));
  const files = context.files ?? [];
  const drafting = draftingOf(build, regions, marks, names, code, files);
  const headings = new Map(regions.work.map(({ id, heading }) => [id, heading]));
  const errata = composeErrata(build.errata, marks, headings, names);
  const glosses = glossesOf(facts.terms);
  const tables = { build, facts, marks, names };
  const inventory = {
    parts: composePartRows(tables),
    tools: composeToolRows(tables),
    wiring: composeWiringRows(tables),
    code: new Map(code.map((block) => [block.path, block.id])),
  };
  const work = composeWork({
    sections: regions.work,
    facts,
    ledger,
    log: build.log,
    marks,
    inventory,
    drafting,
    errata,
    glosses,
  });
  const steps = work.blocks.filter((block): block is StepBlock => block.kind === 'step');
  const opening = composeOpening(build, regions.title, drafting);
  const before = composeSections(regions.before, 2, drafting);
  const after = composeSections(regions.after, 2, drafting);
  const prose = [...opening.sections, ...before, ...after];
  const cautions = gatherCautions([...work.blocks, ...prose]);
  const sentences = composeSummary(build.settings, opening.purpose, steps, inventory.parts);
  const blocks: (PageBlock | false | null)[] = [
    opening.cover ?? false,
    {
      kind: 'summary',
      id: 'summary',
      places: Object.values(build.settings.places),
      totals: composeTotals(steps, inventory.parts),
      sentences,
    },
    composeNotices(assembled.findings, errata, marks),
    ...opening.sections,
    cautions.length > 0 && { kind: 'cautionList', id: 'cautions', places: [], cautions },
    ...before,
    composeParts(inventory.parts, regions.parts, drafting),
    composeTools(inventory.tools, regions.tools, drafting),
    inventory.wiring.length > 0 && { kind: 'wiring', id: 'wiring', places: [], rows: inventory.wiring },
    work.blocks.length > 0 && work,
    ...after,
    composeTroubles(build.log, marks, headings),
    ...code,
    files.length > 0 && { kind: 'files', id: 'files', places: [], rows: files },
    ...composeClosing(build, assembled.asOf),
  ];
  return {
    format: 2,
    language: build.settings.language,
    title: build.settings.title ?? build.instructions.title ?? build.name,
    summary: plainSummary(build, opening.purpose),
    site: siteAddress(build.settings.site),
    reports: reportsAddress(build.settings.reports),
    blocks: blocks.filter((block) => block !== false && block !== null),
  };
}

function plainSummary({ settings }: Build, purpose: readonly Words[] | null): string | null {
  const words = settings.summary ?? (purpose === null ? null : plainWords(purpose));
  return words === null || words.trim() === '' ? null : words.replace(/\s+/g, ' ').trim();
}

function siteAddress(written: string | null): string | null {
  const address = written?.trim() ?? '';
  if (!isWebAddress(address) || !/^https?:/i.test(address)) return null;
  return address.replace(/[?#].*$/, '').replace(/\/?$/, '/');
}

/** A bare mail address is taken for one to write to. */
function reportsAddress(written: string | null): string | null {
  const address = written?.trim() ?? '';
  if (isWebAddress(address)) return address;
  return /^[^\s@:/]+@[^\s@:/]+\.[^\s@:/]+$/.test(address) ? `mailto:${address}` : null;
}

function markSteps(work: readonly Section[], names: BlockNames): StepMarks {
  const steps = work.filter((section) => section.role === 'step');
  return new Map(steps.map((step, i) => [step.id, { block: names.of('step', step.id), number: i + 1 }]));
}

function draftingOf(
  build: Build,
  regions: Regions,
  marks: StepMarks,
  names: BlockNames,
  code: readonly CodeFileBlock[],
  published: readonly PublishedFile[],
): Drafting {
  const prose = [...regions.before, ...regions.work, ...regions.after].filter((section) => section.role !== 'step');
  return {
    names,
    shots: new Map(build.shots.map((shot) => [shot.path, shot])),
    choices: choicesByPath(build),
    targets: {
      sections: new Map([
        ...regions.parts.map((section): [string, string] => [section.id, 'parts']),
        ...regions.tools.map((section): [string, string] => [section.id, 'tools']),
        ...prose.map((section): [string, string] => [section.id, names.of('section', section.id)]),
        ...[...marks].map(([id, mark]): [string, string] => [id, mark.block]),
      ]),
      code: new Map(code.map((block) => [block.path, block.id])),
      published: new Set(published.filter(({ withheld }) => withheld === null).map(({ path }) => path)),
      files: new Set(build.files.map((file) => file.path)),
    },
  };
}

/** A choice goes with the content: what was decided about a picture that was edited since holds no longer. */
function choicesByPath({ shots, choices }: Build): Map<Path, ShotChoice> {
  return new Map(
    shots.flatMap((shot): [Path, ShotChoice][] => {
      const choice = choices.find(({ hash }) => shot.hash.startsWith(hash));
      return choice === undefined ? [] : [[shot.path, choice]];
    }),
  );
}

function composeCodeFile(file: PublishedCode, names: BlockNames): CodeFileBlock {
  return { kind: 'codeFile', id: names.of('code', file.path), places: [{ kind: 'file', file: file.path }], ...file };
}

function composeParts(rows: readonly PartRow[], sections: readonly Section[], drafting: Drafting): PageBlock | false {
  const body = bodyBeside(rows, sections, 'parts', drafting);
  if (rows.length === 0 && body.length === 0) return false;
  return { kind: 'parts', id: 'parts', places: sections.map((section) => section.place), body, rows };
}

function composeTools(rows: readonly ToolRow[], sections: readonly Section[], drafting: Drafting): PageBlock | false {
  const body = bodyBeside(rows, sections, 'tools', drafting);
  if (rows.length === 0 && body.length === 0) return false;
  return { kind: 'tools', id: 'tools', places: sections.map((section) => section.place), body, rows };
}

/** What the maker wrote under a table's heading, less the list that the rows were read from. */
function bodyBeside(
  rows: readonly { readonly places: readonly Place[] }[],
  sections: readonly Section[],
  parent: BlockId,
  drafting: Drafting,
): BodyBlock[] {
  const read = rows.flatMap((row) => row.places).filter((place) => place.kind === 'text');
  return sections.flatMap((section) => {
    const blocks = section.blocks.filter((block) => !read.some((place) => isWithin(place, block.place)));
    return composeBody(blocks, { parent, pictureOf: `Picture to ${section.heading}` }, drafting);
  });
}

function isWithin(inner: TextPlace, outer: TextPlace): boolean {
  return inner.file === outer.file && inner.span[0] >= outer.span[0] && inner.span[1] <= outer.span[1];
}
