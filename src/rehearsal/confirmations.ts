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
    .map((proposal) => ({ proposal, gain: gainOf(proposal, build, coverage) * proposal.confidence }))
    .filter(({ gain }) => gain > 0)
    .sort((a, b) => b.gain - a.gain);
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

/** The share of its list that a proposal would cover; twice that where too little of the list is declared. */
function gainOf({ label, about, item }: Proposal, build: Build, coverage: Coverage): number {
  const share = (all: number, covered: number | null, isUrgent: boolean) =>
    all === 0 ? 0 : (isUrgent && (covered ?? 0) < declaresEnough ? 2 : 1) / all;
  switch (label) {
    case 'parts':
      return about === null ? 0 : share(build.parts.filter(({ fitted }) => fitted).length, coverage.parts, true);
    case 'connects':
      return about === null ? 0 : share(build.connections.length, coverage.connections, true);
    case 'tools': {
      const needed = build.tools.filter((tool) => tool.needed);
      return needed.some(({ name }) => sameTool(name, item)) ? share(needed.length, coverage.tools, false) : 0;
    }
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
