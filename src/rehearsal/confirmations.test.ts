import { describe, expect, it } from 'vitest';
import type { Facts } from '#core/facts.ts';
import { madeUpBuild } from '#prose/madeUpBuild.ts';
import { readFacts } from '#prose/readFacts.ts';
import { coverageIfConfirmed, mostHelpful } from './confirmations.ts';
import { rehearse } from './rehearse.ts';

const guide = [
  '## Mount the motor\n\nPush the motor into the housing. Turn the screwdriver.\n',
  '## Test the motor\n\nHold the motor.\n',
  '## Fit the lever\n\nClip the lever on.\n',
];
const parts = ['motor: Geared motor', 'housing: Printed housing', 'lever: Lever', 'spring: Spring'];

function build(steps = guide) {
  return madeUpBuild({ parts, tools: ['screwdriver'], guide: steps.join('\n') });
}

function helpful(facts: Facts, of = build(), most = 5): string[] {
  return mostHelpful(of, facts, rehearse(of, facts).coverage, most).map(({ about }) => about ?? '');
}

describe('mostHelpful', () => {
  it('names each listed thing once, and what the rehearsal lacks before tools', () => {
    const facts = readFacts(build());
    const found = helpful(facts);
    expect(found.slice(0, 3).sort()).toEqual(['part:housing', 'part:lever', 'part:motor']);
    expect(found.slice(3)).toEqual(['tool:screwdriver']);
    expect(helpful(facts, build(), 2)).toHaveLength(2);
  });

  it('leaves out what a step declares already', () => {
    const declared = build([guide[0]?.replace('\n\n', '\n- Parts: motor\n\n') ?? '', ...guide.slice(1)]);
    expect(helpful(readFacts(declared), declared)).not.toContain('part:motor');
  });
});

describe('coverageIfConfirmed', () => {
  it('counts what is proposed beside what is declared, and only that', () => {
    const facts = readFacts(build());
    expect(rehearse(build(), facts).coverage).toEqual({ parts: 0, connections: null, tools: 0 });
    expect(coverageIfConfirmed(build(), facts)).toEqual({ parts: 0.75, connections: null, tools: 1 });
    expect(coverageIfConfirmed(build(), { ...facts, proposals: [] }).parts).toBe(0);
  });
});
