import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Action, ActionKind } from '#core/action.ts';
import { at, type SmallStep, smallBuild } from '../../tests/checks/smallBuild.ts';
import { rehearse } from './rehearse.ts';

const seed = 20_260_101;
const names = ['R1', 'R2', 'U1', 'screw', 'wire', 'lamp head', 'X9'];
const pins = ['R1.1', 'R1.2', 'U1.5', 'U1.GND', 'R2.1', 'X9.1'];
const name = fc.constantFrom(...names);
const pair = fc.tuple(fc.constantFrom(...pins), fc.constantFrom(...pins)).filter(([a, b]) => a !== b);
const state = fc.constantFrom<'on' | 'off'>('on', 'off');

const step: fc.Arbitrary<Omit<SmallStep, 'id'>> = fc.record(
  {
    uses: fc.array(fc.oneof(name, fc.tuple(name, fc.integer({ min: 1, max: 5 }))), { maxLength: 4 }),
    reads: fc.array(name, { maxLength: 2 }),
    makes: fc.array(fc.constant('lamp head'), { maxLength: 1 }),
    connects: fc.array(pair, { maxLength: 3 }),
    removes: fc.array(fc.oneof(name, pair), { maxLength: 2 }),
    power: fc.tuple(state, state),
    optional: fc.boolean(),
    variant: fc.constantFrom('a', 'b'),
  },
  { requiredKeys: [] },
);

const small = fc
  .tuple(fc.array(step, { maxLength: 6 }), fc.array(pair, { maxLength: 4 }), fc.integer({ min: 0, max: 6 }))
  .map(([steps, wiring, screws]) => ({
    parts: [{ name: 'R1,R2' }, { name: 'U1' }, { name: 'screw', n: screws }, { name: 'wire', n: 60, unit: 'cm' }],
    wiring,
    steps: steps.map((facts, index): SmallStep => ({ ...facts, id: `s${index}` })),
  }));

describe('any rehearsal', () => {
  it('gives the same ledger twice, whole and in plain data', () => {
    fc.assert(
      fc.property(small, (made) => {
        const { build, facts } = smallBuild(made);
        const ledger = rehearse(build, facts);
        expect(rehearse(build, facts)).toEqual(ledger);
        expect(JSON.parse(JSON.stringify(ledger))).toEqual(ledger);
      }),
      { seed, numRuns: 120 },
    );
  });
  it('never holds less than nothing nor more than is listed, and covers between none and all', () => {
    fc.assert(
      fc.property(small, (made) => {
        const { build, facts } = smallBuild(made);
        const { steps, coverage } = rehearse(build, facts);
        const listed: Record<string, number> = { R1: 2, U1: 1, screw: made.parts[2]?.n ?? 0, wire: 60 };
        for (const { before, after } of steps) {
          for (const bag of [before.bag, after.bag]) {
            for (const [part, n] of Object.entries(bag)) {
              expect(n).toBeGreaterThanOrEqual(0);
              expect(n).toBeLessThanOrEqual(listed[part] ?? 0);
            }
          }
        }
        for (const share of [coverage.parts, coverage.connections]) {
          if (share !== null) expect(share).toSatisfy((n: number) => n >= 0 && n <= 1);
        }
      }),
      { seed, numRuns: 120 },
    );
  });
  it('starts each step as the one before left off, where there are no variants', () => {
    fc.assert(
      fc.property(small, (made) => {
        const steps = made.steps.map(({ variant: _, ...rest }) => rest);
        const { build, facts } = smallBuild({ ...made, steps });
        const ledger = rehearse(build, facts);
        ledger.steps.slice(1).forEach(({ before }, index) => {
          expect(before).toEqual(ledger.steps[index]?.after);
        });
      }),
      { seed, numRuns: 120 },
    );
  });
  it('halts no more and holds the same, whatever work the words tell', () => {
    const kinds = fc.array(
      fc.constantFrom<ActionKind>('solder', 'plug-in', 'switch-on', 'strip', 'wait', 'turn-over'),
      {
        maxLength: 8,
      },
    );
    fc.assert(
      fc.property(small, kinds, (made, told) => {
        const { build, facts } = smallBuild(made);
        const actions = told.map(
          (kind, index): Action => ({
            kind,
            verb: kind,
            told: 'do',
            step: `s${index % Math.max(1, made.steps.length)}`,
            place: at('guide.md', index, kind),
          }),
        );
        const [silent, heard] = [rehearse(build, facts), rehearse(build, { ...facts, actions })];
        expect(heard.steps).toEqual(silent.steps);
        expect(heard.stops.filter(({ claim }) => claim?.basis !== 'read')).toEqual(silent.stops);
      }),
      { seed, numRuns: 120 },
    );
  });
  it('is not changed by anything that was only read', () => {
    fc.assert(
      fc.property(small, (made) => {
        const silent = { ...made, steps: made.steps.map(({ reads: _, ...rest }) => rest) };
        const run = (one: typeof made) => {
          const { build, facts } = smallBuild(one);
          const ledger = rehearse(build, facts);
          return { ...ledger, stops: ledger.stops.filter(({ kind }) => kind !== 'part-left-over') };
        };
        expect(run(made)).toEqual(run(silent));
      }),
      { seed, numRuns: 120 },
    );
  });
});
