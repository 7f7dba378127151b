import type { Action } from '#core/action.ts';
import type { Build } from '#core/build.ts';
import type { Claim } from '#core/claim.ts';
import type { Controller, PinMention } from '#core/facts.ts';
import { type Proposal, proposalId } from '#core/proposal.ts';
import { type FactLabel, factLabels, type StepFacts, type StepId } from '#core/step.ts';
import type { KnownThings } from '../knownThings.ts';
import { proposeJoins } from './proposeJoins.ts';
import { proposeParts } from './proposeParts.ts';
import { proposeStates } from './proposeStates.ts';
import { proposeTools } from './proposeTools.ts';
import { stepTalk } from './stepTalk.ts';

/** What was read already. */
export interface ReadSoFar {
  readonly steps: Readonly<Record<StepId, StepFacts>>;
  readonly controllers: readonly Claim<Controller>[];
  readonly pins: readonly Claim<PinMention>[];
  readonly actions: readonly Action[];
  /** False where the guide is in another language than names and work are read in. */
  readonly readsWords: boolean;
}

/**
 * What steps speak of but do not declare, in reading order and within a step by label, the surest first. What the
 * maker has declined is left out. Where words cannot be read, only references and pins speak.
 */
export function proposeFacts(build: Build, known: KnownThings, read: ReadSoFar): Proposal[] {
  const talk = stepTalk(build, read.actions);
  const all = [
    ...proposeParts(build, known, read, talk),
    ...proposeJoins(read.pins, known, read.steps),
    ...(read.readsWords
      ? [...proposeTools(build, read.steps, talk), ...proposeStates(build, read.steps, read.controllers, talk)]
      : []),
  ];
  const declined = new Set(build.settings.declined);
  const order = new Map(build.instructions.sections.map(({ id }, index) => [id, index]));
  return all
    .filter((proposal) => !declined.has(proposalId(proposal)))
    .sort(
      (a, b) =>
        (order.get(a.step) ?? 0) - (order.get(b.step) ?? 0) ||
        rankOf(a.label) - rankOf(b.label) ||
        b.confidence - a.confidence,
    );
}

function rankOf(label: FactLabel): number {
  return factLabels.indexOf(label);
}
