import type { Build } from '#core/build.ts';
import type { Tool } from '#core/part.ts';
import type { Proposal } from '#core/proposal.ts';
import { rememberFor } from '#core/remember.ts';
import type { StepFacts, StepId } from '#core/step.ts';
import { tokensOf } from '#notation/names.ts';
import bench from './benchTools.json';
import { confidenceOf, type Evidence, surest, together } from './evidence.ts';
import { findNamed } from './findNamed.ts';
import { findTools } from './findTools.ts';
import { type KnownNames, knownNames } from './knownNames.ts';
import type { Saying } from './stepTalk.ts';

/** A tool as it would be written: by the maker's name where it is listed. */
interface BenchTool {
  readonly name: string;
  readonly isListed: boolean;
}

interface Need {
  readonly tool: string;
  readonly sure: boolean;
  readonly only?: readonly string[];
  readonly unless?: readonly string[];
}

const needs: Readonly<Record<string, readonly Need[]>> = bench.needs;

/** The tools that each step names or that its work needs, for steps that declare none. */
export function proposeTools(
  build: Build,
  steps: Readonly<Record<StepId, StepFacts>>,
  talk: ReadonlyMap<StepId, readonly Saying[]>,
): Proposal[] {
  const { names, standard } = benchOf(build.tools);
  return [...talk].flatMap(([step, sayings]) =>
    (steps[step]?.tools.length ?? 0) > 0
      ? []
      : [...toolsIn(sayings, names, standard)].flatMap(([tool, evidence]) => proposalOf(step, tool, evidence)),
  );
}

/** The maker's tools by their names, and those of any bench, each as the maker calls it. */
const benchOf = rememberFor((tools: readonly Tool[]) => {
  const listed = tools.map(({ name }): BenchTool => ({ name, isListed: true }));
  return {
    names: knownNames(listed, ({ name }) => ({ name, more: [], kind: [], count: null })),
    standard: new Map(bench.names.map((synonyms) => [synonyms[0] ?? '', benchTool(synonyms, listed)])),
  };
});

function toolsIn(
  sayings: readonly Saying[],
  names: KnownNames<BenchTool>,
  standard: ReadonlyMap<string, BenchTool>,
): Map<BenchTool, Evidence[]> {
  const found = new Map<BenchTool, Evidence[]>();
  const note = (tool: BenchTool, saying: Saying, fit: number, at: Evidence['place'], because: string) => {
    const evidence = { confidence: confidenceOf(fit, saying), place: at, because, count: null, kind: saying.kind };
    found.set(tool, [...(found.get(tool) ?? []), evidence]);
  };
  for (const saying of sayings) {
    for (const { thing, fit, from, to } of findNamed(saying.text, names, (at) => saying.isWork(at))) {
      if (fit >= 0.5) note(thing, saying, fit, saying.placeOf(from, to), 'your tools hold it');
    }
    for (const { tool: name, isAmbiguous, from, to } of findTools(saying.text)) {
      const tool = standard.get(name);
      if (tool === undefined || saying.isWork(from) || (isAmbiguous && saying.work.length === 0)) continue;
      const fit = isAmbiguous ? 0.45 : 0.75;
      note(tool, saying, tool.isListed ? fit + 0.1 : fit, saying.placeOf(from, to), `that is ${article(name)}`);
    }
    for (const { kind, told, place } of [...saying.work, ...saying.spoken]) {
      const said = told === 'not' ? [] : tokensOf(saying.text);
      for (const need of needs[kind] ?? []) {
        const tool = standard.get(need.tool);
        const isMeant =
          (need.only === undefined || need.only.some((word) => said.includes(word))) &&
          need.unless?.some((word) => said.includes(word)) !== true;
        if (tool === undefined || told === 'not' || !isMeant) continue;
        const fit = (need.sure ? 0.68 : 0.5) + (tool.isListed ? 0.07 : 0) - (told === 'do' ? 0 : need.sure ? 0.1 : 0.2);
        note(tool, saying, fit, place, `that takes ${article(need.tool)}`);
      }
    }
  }
  return found;
}

function proposalOf(step: StepId, tool: BenchTool, evidence: readonly Evidence[]): Proposal[] {
  const confidence = together(evidence);
  const best = surest(evidence);
  if (best === undefined || confidence < 0.3) return [];
  const others = evidence.filter((one) => one !== best).map(({ place }) => place);
  return [
    {
      step,
      label: 'tools',
      item: tool.isListed ? plainName(tool.name) : tool.name,
      about: tool.isListed ? `tool:${tool.name}` : null,
      basis: 'read',
      confidence,
      places: [best.place, ...others],
      why: `“${best.place.quote.replace(/\s+/g, ' ')}” is said here, and ${best.because}.`,
      again: false,
    },
  ];
}

/** The listed tool that goes by one of the names, the first name first; else one that is not listed. */
function benchTool(synonyms: readonly string[], listed: readonly BenchTool[]): BenchTool {
  for (const synonym of synonyms) {
    const words = tokensOf(synonym);
    const own = listed.find(({ name }) =>
      words.length <= 1 ? tokensOf(plainName(name)).at(-1) === words[0] : hasAll(name, words),
    );
    if (own !== undefined) return own;
  }
  return { name: synonyms[0] ?? '', isListed: false };
}

function hasAll(name: string, words: readonly string[]): boolean {
  const own = new Set(tokensOf(name));
  return words.every((word) => own.has(word));
}

/** A name that stays one item of a list: what follows a comma or a bracket is left out. */
function plainName(name: string): string {
  return (name.split(/[,;([:]|\s[-–—]\s/)[0] ?? name).replace(/\s+/g, ' ').trim() || name;
}

function article(name: string): string {
  return /(?:s|paper)$/.test(name) && !/ss$/.test(name) ? name : `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;
}
