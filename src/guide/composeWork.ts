import type { Facts } from '#core/facts.ts';
import type { Ledger } from '#core/ledger.ts';
import type { LogNote } from '#core/log.ts';
import { noFacts, type Section, type StepId } from '#core/step.ts';
import type { Drafting } from './composeBody.ts';
import type { Inventory } from './composeNeeds.ts';
import { composeSection } from './composeSections.ts';
import { composeStep, minutesOf } from './composeStep.ts';
import type { ErratumBlock, Minutes, SectionBlock, StepBlock, WiringRow, WorkBlock } from './guide.ts';
import { headingRanks } from './headingRanks.ts';
import { markOf, type StepMarks } from './stepMarks.ts';

/** What the run of steps is composed from. */
export interface WorkSources {
  /** From the first step, or the heading over it, to the last and what belongs to it. */
  readonly sections: readonly Section[];
  readonly facts: Facts;
  readonly ledger: Ledger;
  readonly log: readonly LogNote[];
  readonly marks: StepMarks;
  readonly inventory: Inventory & { readonly wiring: readonly WiringRow[] };
  readonly drafting: Drafting;
  readonly errata: readonly ErratumBlock[];
  readonly glosses: ReadonlyMap<StepId, StepBlock['words']>;
}

/** The steps in the order of doing, with what the maker wrote between them. */
export function composeWork(sources: WorkSources): WorkBlock {
  const ranks = headingRanks(
    sources.sections.map((section) => section.depth),
    3,
  );
  const headings = new Map(sources.sections.map(({ id, heading }) => [id, heading]));
  const stepDepth = sources.sections.find(({ role }) => role === 'step')?.depth ?? 0;
  const blocks: (StepBlock | SectionBlock)[] = [];
  let after: Minutes | null = { hands: 0, wait: 0 };
  for (const [i, section] of sources.sections.entries()) {
    const level = ranks[i] ?? 3;
    const mark = sources.marks.get(section.id);
    if (section.role !== 'step' || !mark) {
      blocks.push({ ...composeSection(section, level, sources.drafting), folded: isFolded(section, stepDepth) });
      continue;
    }
    const facts = sources.facts.steps[section.id] ?? noFacts;
    const notes = sources.log.filter(
      ({ step }) => step !== null && markOf(step, sources.marks, headings)?.block === mark.block,
    );
    const errata = sources.errata.filter(({ step }) => step?.block === mark.block);
    const words = sources.glosses.get(section.id) ?? [];
    const comesPowered = sources.ledger.steps.find(({ step }) => step === section.id)?.before.powered ?? false;
    blocks.push(composeStep({ ...sources, section, facts, mark, level, after, comesPowered, notes, errata, words }));
    after = added(after, minutesOf(facts));
  }
  return { kind: 'work', id: sources.drafting.names.of('work', 'steps'), places: [], blocks };
}

/** Under a step, a heading that asks or offers background is for those who want to know more. */
function isFolded({ role, depth, heading }: Section, stepDepth: number): boolean {
  return (
    role === 'prose' && depth > stepDepth && /\?$|^(?:why|background|more (?:on|about)|for beginners)\b/i.test(heading)
  );
}

function added(sum: Minutes | null, more: Minutes | null): Minutes | null {
  return sum && more ? { hands: sum.hands + more.hands, wait: sum.wait + more.wait } : null;
}
