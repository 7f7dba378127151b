import type { Build } from '#core/build.ts';
import { declared } from '#core/claim.ts';
import type { Facts } from '#core/facts.ts';
import type { Coverage } from '#core/ledger.ts';
import type { Proposal } from '#core/proposal.ts';
import { noFacts, type StepFacts } from '#core/step.ts';
import { declaresEnough, measureCoverage } from './coverage.ts';
import { sameTool } from './sameTool.ts';
import { type ScriptStep, scriptOf } from './script.ts';

/** How much of the build the steps would declare if the maker confirmed every proposal. */
export function coverageIfConfirmed(build: Build, facts: Facts): Coverage {
  return measureCoverage(build, [...scriptOf(build, facts), asDeclared(build, facts.proposals)]);
}

/**
 * The proposals that would do most for the rehearsal if they were confirmed, the most useful first: each covers
 * something that nothing declares and no proposal before it covers. What keeps the guide from being rehearsed comes
 * first; among equals, the surest.
 */
export function mostHelpful(build: Build, { proposals, steps }: Facts, coverage: Coverage, most: number): Proposal[] {
  const covered = new Set(Object.values(steps).flatMap(keysDeclared));
  const rated = proposals
    .filter(({ again }) => !again)
    .map((proposal) => ({
      proposal,
      gain: gainOf(proposal, build) * proposal.confidence,
      isUrgent: isUrgent(proposal, coverage),
    }))
    .filter(({ gain }) => gain > 0)
    .sort((a, b) => Number(b.isUrgent) - Number(a.isUrgent) || b.gain - a.gain);
  return rated
    .filter(({ proposal: { about, item } }) => {
      const key = about ?? item;
      return !covered.has(key) && covered.add(key) !== undefined;
    })
    .slice(0, most)
    .map(({ proposal }) => proposal);
}

function keysDeclared({ uses, connects, tools }: StepFacts): string[] {
  return [
    ...uses.map(({ value }) => `part:${value.part}`),
    ...connects.map(({ value }) => `connection:${value.connection}`),
    ...tools.map(({ value }) => `tool:${value}`),
  ];
}

/** Whether too little of a kind is declared to rehearse the guide. */
function isUrgent({ label }: Proposal, coverage: Coverage): boolean {
  const covered = label === 'parts' ? coverage.parts : label === 'connects' ? coverage.connections : null;
  return covered !== null && covered < declaresEnough;
}

/** The share of its list that a proposal would cover. */
function gainOf({ label, about, item }: Proposal, build: Build): number {
  const needed = build.tools.filter((tool) => tool.needed);
  switch (label) {
    case 'parts':
      return about === null ? 0 : 1 / Math.max(1, build.parts.filter(({ fitted }) => fitted).length);
    case 'connects':
      return about === null ? 0 : 1 / Math.max(1, build.connections.length);
    case 'tools':
      return needed.some(({ name }) => sameTool(name, item)) ? 1 / needed.length : 0;
    default:
      return 0;
  }
}

/** One more step that declares all that is proposed. */
function asDeclared(build: Build, proposals: readonly Proposal[]): ScriptStep {
  const named = (label: Proposal['label']) => proposals.filter((proposal) => proposal.label === label);
  const facts: StepFacts = {
    ...noFacts,
    uses: named('parts').flatMap(({ about, item, places }) =>
      about === null
        ? []
        : [
            declared(
              {
                named: item,
                part: about.slice('part:'.length),
                ref: null,
                amount: { n: 1, unit: 'pcs', approximate: false },
              },
              ...places,
            ),
          ],
    ),
    tools: named('tools').map(({ item, places }) => declared(item, ...places)),
    connects: named('connects').flatMap(({ about, places }) => {
      const row = build.connections.find(({ id }) => about === `connection:${id}`);
      return row === undefined
        ? []
        : [declared({ from: row.from, to: row.to, id: row.id, connection: row.id }, ...places)];
    }),
  };
  return { id: '', facts, variants: null, optional: false };
}
