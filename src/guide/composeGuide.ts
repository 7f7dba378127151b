import type { Assembled } from '#core/assembled.ts';
import type { Build } from '#core/build.ts';
import type { Path, Place, TextPlace } from '#core/place.ts';
import type { Section } from '#core/step.ts';
import { type BlockNames, createBlockNames } from './blockNames.ts';
import { composeBody, type Drafting } from './composeBody.ts';
import { composeClosing } from './composeClosing.ts';
import { composeOpening } from './composeOpening.ts';
import { composeSections } from './composeSections.ts';
import { composeSummary } from './composeSummary.ts';
import { composePartRows, composeToolRows, composeWiringRows } from './composeTables.ts';
import { composeWork } from './composeWork.ts';
import { gatherCautions } from './gatherCautions.ts';
import type { BlockId, BodyBlock, CodeFileBlock, Guide, PageBlock, PartRow, StepBlock, ToolRow } from './guide.ts';
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
export function composeGuide(assembled: Assembled, context: { readonly code: readonly PublishedCode[] }): Guide {
  const { build, facts, ledger } = assembled;
  const names = createBlockNames();
  const regions = regionsOf(build.instructions.sections);
  const marks = markSteps(regions.work, names);
  const code = context.code.map((file) => composeCodeFile(file, names));
  const drafting = draftingOf(build, regions, marks, names, code);
  const tables = { build, facts, marks, names };
  const inventory = {
    parts: composePartRows(tables),
    tools: composeToolRows(tables),
    wiring: composeWiringRows(tables),
    code: new Map(code.map((block) => [block.path, block.id])),
  };
  const work = composeWork({ sections: regions.work, facts, ledger, log: build.log, marks, inventory, drafting });
  const steps = work.blocks.filter((block): block is StepBlock => block.kind === 'step');
  const opening = composeOpening(build, regions.title, drafting);
  const before = composeSections(regions.before, 2, drafting);
  const after = composeSections(regions.after, 2, drafting);
  const prose = [...opening.sections, ...before, ...after];
  const cautions = gatherCautions([...work.blocks, ...prose]);
  const sentences = composeSummary(build.settings, opening.purpose, steps, inventory.parts);
  const blocks: (PageBlock | false)[] = [
    opening.cover ?? false,
    { kind: 'summary', id: 'summary', places: Object.values(build.settings.places), sentences },
    ...opening.sections,
    cautions.length > 0 && { kind: 'cautionList', id: 'cautions', places: [], cautions },
    ...before,
    composeParts(inventory.parts, regions.parts, drafting),
    composeTools(inventory.tools, regions.tools, drafting),
    inventory.wiring.length > 0 && { kind: 'wiring', id: 'wiring', places: [], rows: inventory.wiring },
    work.blocks.length > 0 && work,
    ...after,
    ...code,
    ...composeClosing(build, assembled.asOf),
  ];
  return {
    format: 1,
    language: build.settings.language,
    title: build.settings.title ?? build.instructions.title ?? build.name,
    blocks: blocks.filter((block) => block !== false),
  };
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
): Drafting {
  const prose = [...regions.before, ...regions.work, ...regions.after].filter((section) => section.role !== 'step');
  return {
    names,
    shots: new Map(build.shots.map((shot) => [shot.path, shot])),
    targets: {
      sections: new Map([
        ...regions.parts.map((section): [string, string] => [section.id, 'parts']),
        ...regions.tools.map((section): [string, string] => [section.id, 'tools']),
        ...prose.map((section): [string, string] => [section.id, names.of('section', section.id)]),
        ...[...marks].map(([id, mark]): [string, string] => [id, mark.block]),
      ]),
      code: new Map(code.map((block) => [block.path, block.id])),
      files: new Set(build.files.map((file) => file.path)),
    },
  };
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
