import { describe, expect, it } from 'vitest';
import { declared } from '#core/claim.ts';
import type { DrivenPin } from '#core/facts.ts';
import type { TermMention } from '#core/term.ts';
import { at, type SmallBuild, smallBuild } from '../../tests/checks/smallBuild.ts';
import { rehearse } from './rehearse.ts';

const run = (small: SmallBuild) => {
  const { build, facts } = smallBuild(small);
  return rehearse(build, facts);
};
const stopsOf = (small: SmallBuild) => run(small).stops.map(({ kind, step }) => [kind, step]);

describe('the bag of the simulated builder', () => {
  it('holds what is listed, and less of it after each step', () => {
    const { steps } = run({
      parts: [{ name: 'R1,R2' }, { name: 'screw', n: 4 }],
      steps: [
        { id: 'a', uses: ['R1', ['screw', 3]] },
        { id: 'b', uses: ['R2', 'screw'] },
      ],
    });
    expect(steps[0]?.before.bag).toEqual({ R1: 2, screw: 4 });
    expect(steps[0]?.after.bag).toEqual({ R1: 1, screw: 1 });
    expect(steps[1]?.after.bag).toEqual({ R1: 0, screw: 0 });
  });
  it('does not hold what is marked as not fitted', () => {
    const { steps } = run({
      parts: [{ name: 'R9', fitted: false }, { name: 'R1' }],
      steps: [{ id: 'a', uses: ['R1'] }],
    });
    expect(steps[0]?.before.bag).toEqual({ R1: 1 });
  });
  it('runs out where steps together take more than is listed', () => {
    const { stops } = run({
      parts: [{ name: 'screw', n: 4 }],
      steps: [
        { id: 'a', uses: [['screw', 3]] },
        { id: 'b', uses: [['screw', 2]] },
      ],
    });
    expect(stops).toMatchObject([{ kind: 'part-used-up', step: 'b', had: 1, wanted: 2 }]);
  });
  it('adds up lengths, whichever unit each is written in', () => {
    const wire = (second: number) => ({
      parts: [{ name: 'wire', n: 50, unit: 'cm' }],
      steps: [
        { id: 'a', uses: [['wire', 30, 'cm']] as const },
        { id: 'b', uses: [['wire', second, 'mm']] as const },
      ],
    });
    expect(stopsOf(wire(200))).toEqual([]);
    expect(stopsOf(wire(201))).toEqual([['part-used-up', 'b']]);
  });
  it('never runs out of what is listed or taken approximately, or counted in another way', () => {
    expect(
      stopsOf({ parts: [{ name: 'glue', n: 1, approximate: true }], steps: [{ id: 'a', uses: [['glue', 5]] }] }),
    ).toEqual([]);
    expect(stopsOf({ parts: [{ name: 'lid', n: 0.2 }], steps: [{ id: 'a', uses: ['lid'] }] })).toEqual([]);
    expect(stopsOf({ parts: [{ name: 'wire', n: 1 }], steps: [{ id: 'a', uses: [['wire', 30, 'cm']] }] })).toEqual([]);
  });
  it('never runs out where a step leaves open how much it takes', () => {
    expect(
      stopsOf({ parts: [{ name: 'screw', n: 2 }], steps: [{ id: 'a', uses: [['screw', 5]], roughly: true }] }),
    ).toEqual([]);
  });
  it('takes a reference once, however often it is named', () => {
    const { stops, steps } = run({
      parts: [{ name: 'U1' }, { name: 'case' }],
      steps: [
        { id: 'a', uses: ['U1', 'case'] },
        { id: 'b', uses: ['U1', 'case'] },
      ],
    });
    expect(stops).toEqual([]);
    expect(steps[1]?.after.bag).toEqual({ U1: 0, case: 0 });
  });
  it('cuts a wire anew each time, though it has a reference', () => {
    const steps = [
      { id: 'a', uses: [['W1', 30, 'cm']] as const },
      { id: 'b', uses: [['W1', 30, 'cm']] as const },
    ];
    expect(stopsOf({ parts: [{ name: 'W1', n: 50, unit: 'cm' }], steps })).toEqual([['part-used-up', 'b']]);
    expect(stopsOf({ parts: [{ name: 'W1', n: 60, unit: 'cm' }], steps })).toEqual([]);
  });
  it('takes a single piece twice where both steps count it', () => {
    const small: SmallBuild = {
      parts: [{ name: 'screw' }],
      steps: [
        { id: 'a', uses: [['screw', 1]] },
        { id: 'b', uses: [['screw', 1]] },
      ],
    };
    expect(stopsOf(small)).toEqual([['part-used-up', 'b']]);
  });
  it('lets each variant draw on the whole bag', () => {
    const small: SmallBuild = {
      parts: [{ name: 'screw', n: 4 }],
      steps: [
        { id: 'a', uses: [['screw', 4]], variant: 'Desk' },
        { id: 'b', uses: [['screw', 4]], variant: 'Wall' },
      ],
    };
    expect(stopsOf(small)).toEqual([]);
    expect(stopsOf({ ...small, steps: [...(small.steps ?? []), { id: 'c', uses: [['screw', 1]] }] })).toEqual([
      ['part-used-up', 'c'],
    ]);
  });
});

describe('what is left at the end', () => {
  it('is a part that no step takes, where the steps declare at least half of the list', () => {
    expect(stopsOf({ parts: [{ name: 'R1' }, { name: 'R2' }], steps: [{ id: 'a', uses: ['R1'] }] })).toEqual([
      ['part-left-over', null],
    ]);
  });
  it('is nothing where the steps declare less than half of the list', () => {
    const parts = [{ name: 'R1' }, { name: 'R2' }, { name: 'R3' }];
    const ledger = run({ parts, steps: [{ id: 'a', uses: ['R1'] }] });
    expect(ledger.coverage.parts).toBeCloseTo(1 / 3);
    expect(ledger.stops).toEqual([]);
  });
  it('is not a part that the prose speaks of, nor one that a wire is joined to, nor one of an optional step', () => {
    const parts = [{ name: 'R1' }, { name: 'R2' }];
    expect(stopsOf({ parts, steps: [{ id: 'a', uses: ['R1'], reads: ['R2'] }] })).toEqual([]);
    expect(stopsOf({ parts, steps: [{ id: 'a', uses: ['R1'], connects: [['R1.1', 'R2.1']] }] })).toEqual([]);
    const screws = [{ name: 'R1' }, { name: 'screw', n: 4 }];
    expect(
      stopsOf({
        parts: screws,
        steps: [
          { id: 'a', uses: ['R1'] },
          { id: 'b', uses: [['screw', 2]], optional: true },
        ],
      }),
    ).toEqual([]);
    expect(
      stopsOf({
        parts: screws,
        steps: [
          { id: 'a', uses: ['R1'] },
          { id: 'b', uses: [['screw', 2]] },
        ],
      }),
    ).toEqual([['part-left-over', null]]);
  });
  it('is not a part that the text of a step names, in a range or by its description', () => {
    const parts = [{ name: 'R1' }, { name: 'R2,R3' }, { name: 'rubber foot', n: 4 }, { name: 'R9' }, { name: 'R10' }];
    const take = { id: 'a', uses: ['R1', 'R9', 'R10'] };
    expect(
      stopsOf({
        parts,
        steps: [{ ...take, prose: 'Then R1–R3. Last of all come the rubber feet, or one rubber foot.' }],
      }),
    ).toEqual([]);
    expect(stopsOf({ parts, steps: [{ ...take, prose: 'Then R1.' }] })).toHaveLength(2);
  });
  it('is no rest of a wire that was cut to length', () => {
    const parts = [{ name: 'wire', n: 60, unit: 'cm' }];
    expect(stopsOf({ parts, steps: [{ id: 'a', uses: [['wire', 55, 'cm']] }] })).toEqual([]);
  });
});

describe('connections', () => {
  const parts = [{ name: 'U1' }, { name: 'R1' }, { name: 'H1' }];
  const wiring = [
    ['U1.5', 'R1.1'],
    ['R1.2', 'H1.IN'],
    ['U1.GND', 'H1.GND'],
  ] as const;
  const all = { id: 'a', uses: ['U1', 'R1', 'H1'] };

  it('that no step makes are missed where the steps make at least half of them', () => {
    const { stops, coverage } = run({
      parts,
      wiring,
      steps: [
        {
          ...all,
          connects: [
            ['R1.1', 'U1.5'],
            ['H1.IN', 'R1.2'],
          ],
        },
      ],
    });
    expect(coverage.connections).toBeCloseTo(2 / 3);
    expect(stops).toMatchObject([{ kind: 'connection-never-made', connection: 'H1.GND~U1.GND' }]);
  });
  it('are made by another way round the same net', () => {
    const star = [
      ['U1.GND', 'PS1.MINUS'],
      ['H1.GND', 'PS1.MINUS'],
    ] as const;
    const small: SmallBuild = {
      parts: [...parts, { name: 'PS1' }],
      wiring: star,
      steps: [
        {
          id: 'a',
          uses: ['U1', 'H1', 'R1', 'PS1'],
          connects: [
            ['U1.GND', 'H1.GND'],
            ['H1.GND', 'PS1.MINUS'],
          ],
        },
      ],
    };
    expect(stopsOf(small)).toEqual([]);
    expect(run(small).coverage.connections).toBe(1);
  });
  it('need both parts; a part that only a later step takes up is not in place', () => {
    const steps = [
      { id: 'a', uses: ['U1', 'R1'], connects: [['R1.2', 'H1.IN']] as const },
      {
        id: 'b',
        uses: ['H1'],
        connects: [
          ['U1.GND', 'H1.GND'],
          ['U1.5', 'R1.1'],
        ] as const,
      },
    ];
    const { stops } = run({ parts, wiring, steps });
    expect(stops).toMatchObject([{ kind: 'part-not-in-place', step: 'a', part: 'H1', arrives: 'b' }]);
  });
  it('need the very reference, not another of the same row', () => {
    const steps = [
      { id: 'a', uses: ['R1'], connects: [['R1.2', 'R2.1']] as const },
      { id: 'b', uses: ['R2'] },
    ];
    expect(stopsOf({ parts: [{ name: 'R1,R2' }], steps })).toEqual([['part-not-in-place', 'a']]);
    const together = [{ id: 'a', uses: [['R1,R2', 2] as const], connects: [['R1.2', 'R2.1']] as const }];
    expect(stopsOf({ parts: [{ name: 'R1,R2' }], steps: together })).toEqual([]);
  });
  it('may go to a part that no step takes up: a supply lies ready', () => {
    expect(
      stopsOf({
        parts: [...parts, { name: 'PS1' }],
        wiring: [...wiring, ['U1.5V', 'PS1.PLUS']],
        steps: [{ ...all, connects: [...wiring, ['U1.5V', 'PS1.PLUS']] }],
      }),
    ).toEqual([]);
  });
  it('to another pin than the wiring has stop the builder, with the row that comes nearest', () => {
    const { stops } = run({ parts, wiring, steps: [{ ...all, connects: [['U1.6', 'R1.1'], ...wiring.slice(1)] }] });
    expect(stops.filter(({ kind }) => kind === 'connection-not-in-wiring')).toMatchObject([{ nearest: 'R1.1~U1.5' }]);
  });
  it('whose pins are named in another way settle nothing', () => {
    const { stops } = run({ parts, wiring, steps: [{ ...all, connects: [['U1.D5', 'R1.1'], ...wiring.slice(1)] }] });
    expect(stops.filter(({ kind }) => kind === 'connection-not-in-wiring')).toEqual([]);
  });
  it('may be made again after they were taken away, and not otherwise', () => {
    const made = { ...all, connects: wiring };
    const again = { id: 'c', connects: [['U1.5', 'R1.1']] as const };
    expect(stopsOf({ parts, wiring, steps: [made, again] })).toEqual([['connection-made-twice', 'c']]);
    const away = { id: 'b', removes: [['U1.5', 'R1.1']] as const };
    const ledger = run({ parts, wiring, steps: [made, away, again] });
    expect(ledger.stops).toEqual([]);
    expect(ledger.steps[1]?.after.made).not.toContain('R1.1~U1.5');
    expect(ledger.steps[2]?.after.made).toContain('R1.1~U1.5');
  });
  it('are made once by each builder where two variants make the same one', () => {
    const made = { ...all, connects: wiring, variant: 'desk' };
    const small = (variant: string) => ({
      parts,
      wiring,
      steps: [made, { id: 'b', connects: wiring.slice(0, 1), variant }],
    });
    expect(stopsOf(small('wall'))).toEqual([]);
    expect(stopsOf(small('desk'))).toEqual([['connection-made-twice', 'b']]);
  });
  it('taken away before they were made leave the builder searching', () => {
    const away = { id: 'z', removes: [['U1.5', 'R1.1']] as const };
    const { stops } = run({ parts, wiring, steps: [away, { ...all, connects: wiring }] });
    expect(stops).toMatchObject([{ kind: 'removed-before-made', step: 'z', arrives: 'a' }]);
  });
});

describe('sub-assemblies', () => {
  const head = { id: 'build', uses: ['D1'], makes: ['lamp head'] };
  const mount = { id: 'mount', uses: ['The lamp head'] };
  it('are there after the step that makes them', () => {
    const ledger = run({ parts: [{ name: 'D1' }], steps: [head, mount] });
    expect(ledger.stops).toEqual([]);
    expect(ledger.steps[0]?.after.made).toEqual(['lamp head']);
  });
  it('are not there before it', () => {
    expect(stopsOf({ parts: [{ name: 'D1' }], steps: [mount, head] })).toEqual([['assembly-not-made', 'mount']]);
  });
  it('that nobody makes are parts that nobody listed', () => {
    expect(stopsOf({ parts: [{ name: 'D1' }], steps: [{ id: 'a', uses: ['D1', 'R5'] }] })).toEqual([
      ['part-not-listed', 'a'],
    ]);
  });
});

describe('sub-assemblies in numbers', () => {
  const legs = { id: 'legs', uses: [['rod', 4]] as const, makes: ['leg × 2'] };
  const parts = [{ name: 'rod', n: 4 }];
  it('are used up by number, and only by number', () => {
    const mount = (n: number) => ({ id: 'mount', uses: [['leg', n]] as const });
    expect(stopsOf({ parts, steps: [legs, mount(2)] })).toEqual([]);
    expect(stopsOf({ parts, steps: [legs, mount(3)] })).toEqual([['assembly-used-up', 'mount']]);
    expect(stopsOf({ parts, steps: [legs, { id: 'a', uses: ['leg'] }, { id: 'b', uses: ['leg'] }] })).toEqual([]);
  });
  it('are there again after they were lifted out', () => {
    const steps = [legs, { id: 'in', uses: [['leg', 2]] as const }, { id: 'out', removes: ['leg'] }];
    const { stops } = run({ parts, steps: [...steps, { id: 'again', uses: [['leg', 1]] }] });
    expect(stops).toEqual([]);
    expect(stopsOf({ parts, steps: [...steps, { id: 'again', uses: [['leg', 2]] }] })).toEqual([
      ['assembly-used-up', 'again'],
    ]);
  });
  it('give their parts back when they are taken apart before they were used', () => {
    const head = { id: 'head', uses: ['D1'], makes: ['lamp head'] };
    const ledger = run({ parts: [{ name: 'D1' }], steps: [head, { id: 'apart', removes: ['the lamp head'] }] });
    expect(ledger.steps[0]?.after).toMatchObject({ bag: { D1: 0 }, made: ['lamp head'] });
    expect(ledger.steps[1]?.after).toMatchObject({ bag: { D1: 1 }, made: [] });
  });
  it('are missed where nothing after them speaks of them', () => {
    const last = { id: 'close', uses: ['lid'], prose: 'Screw.' };
    const small = (prose: string) => ({ parts: [...parts, { name: 'lid' }], steps: [legs, { ...last, prose }] });
    expect(stopsOf(small('Screw the lid.'))).toEqual([['assembly-never-used', 'legs']]);
    expect(stopsOf(small('Screw the legs on.'))).toEqual([]);
  });
});

describe('the builders of variants', () => {
  it('are each led through on their own, and a step for all is told as the first meets it', () => {
    const ledger = run({
      parts: [{ name: 'screw', n: 4 }],
      steps: [
        { id: 'desk', uses: [['screw', 3]], variant: 'Desk' },
        { id: 'wall', uses: [['screw', 1]], variant: 'wall' },
        { id: 'all', uses: [['screw', 1]] },
      ],
    });
    expect(ledger.variants).toEqual(['Desk', 'wall']);
    expect(ledger.steps.map(({ before }) => before.bag.screw)).toEqual([4, 4, 1]);
    expect(ledger.stops).toEqual([]);
  });
  it('miss nothing at the end that only the others use', () => {
    const parts = [{ name: 'R1' }, { name: 'R2' }];
    const desk = { id: 'a', uses: ['R1'], variant: 'desk' };
    expect(stopsOf({ parts, steps: [desk, { id: 'b', uses: ['R2'], variant: 'wall' }] })).toEqual([]);
  });
  it('stop where only the others have what everyone needs', () => {
    const steps = [
      { id: 'bend', makes: ['bracket'], variant: 'wall' },
      { id: 'turn', makes: ['foot'], variant: 'desk' },
      { id: 'mount', uses: ['bracket', 'foot'], prose: 'Foot and bracket.' },
    ];
    expect(run({ steps }).stops).toMatchObject([
      { kind: 'brought-for-some', what: 'bracket', only: 'wall' },
      { kind: 'brought-for-some', what: 'foot', only: 'desk' },
    ]);
  });
});

describe('what was taken away', () => {
  const parts = [{ name: 'U1' }, { name: 'R1' }];
  const wiring = [['U1.5', 'R1.1']] as const;
  const wire = { id: 'wire', uses: ['U1', 'R1'], connects: wiring };
  it('and never put back is missed at the end', () => {
    expect(stopsOf({ parts, wiring, steps: [wire, { id: 'off', removes: wiring }] })).toEqual([
      ['connection-taken-away', 'off'],
    ]);
    expect(stopsOf({ parts, wiring, steps: [wire, { id: 'off', removes: ['U1'] }] })).toEqual([
      ['part-taken-away', 'off'],
    ]);
  });
  it('is no loss once it is back, or where words put it back', () => {
    const again = { id: 'again', connects: wiring };
    expect(stopsOf({ parts, wiring, steps: [wire, { id: 'off', removes: wiring }, again] })).toEqual([]);
    const back = { id: 'off', removes: ['U1'], prose: 'Press U1 in again.' };
    expect(stopsOf({ parts, wiring, steps: [wire, back] })).toEqual([]);
  });
  it('may be wired to all the same, as the socket of a module is', () => {
    const steps = [
      { id: 'fit', uses: ['U1', 'R1'] },
      { id: 'off', removes: ['U1'] },
      { id: 'wire', connects: wiring },
    ];
    expect(stopsOf({ parts, wiring, steps: [...steps, { id: 'in', uses: ['U1'] }] })).toEqual([]);
  });
});

describe('the clock and the words', () => {
  it('runs as the steps tell, and counts those that do not', () => {
    const { build, facts } = smallBuild({ steps: [{ id: 'a' }, { id: 'b' }] });
    const minutes = declared({ hands: 10, wait: 120 }, at('guide.md', 2, '10 min + 2 h wait'));
    const a = facts.steps.a;
    if (a === undefined) throw new Error('no step');
    const { steps } = rehearse(build, { ...facts, steps: { ...facts.steps, a: { ...a, minutes } } });
    expect(steps.map(({ after }) => after.clock)).toEqual([
      { hands: 10, wait: 120, untold: 0 },
      { hands: 10, wait: 120, untold: 1 },
    ]);
  });
  it('explains a word from where it is told on', () => {
    const { build, facts } = smallBuild({ steps: [{ id: 'a' }, { id: 'b' }, { id: 'c' }] });
    const flux = (told: TermMention['told'], step: string, line: number): TermMention => ({
      term: 'flux',
      meaning: 'a paste',
      told,
      step,
      place: at('guide.md', line, 'flux'),
    });
    const told = { ...facts, terms: [flux('used', 'a', 5), flux('explained', 'b', 15), flux('used', 'c', 25)] };
    const ledger = rehearse(build, told);
    expect(ledger.steps.map(({ after }) => after.explained)).toEqual([[], ['flux'], ['flux']]);
    expect(ledger.stops).toMatchObject([{ kind: 'words-unexplained', words: [{ step: 'a' }] }]);
    expect(rehearse(build, { ...facts, terms: [flux('explained', 'a', 5), flux('used', 'b', 15)] }).stops).toEqual([]);
  });
});

describe('power', () => {
  const parts = [{ name: 'D1' }, { name: 'R1' }];
  const solder = { id: 'solder', uses: ['D1', 'R1'], connects: [['D1.A', 'R1.1']] as const };
  it('is off until a step says otherwise', () => {
    expect(run({ parts, steps: [solder] }).steps[0]?.before.powered).toBe(false);
    expect(stopsOf({ parts, steps: [solder] })).toEqual([]);
  });
  it('that was switched on stays on for the next step', () => {
    const { stops, steps } = run({ parts, steps: [{ id: 'on', power: ['off', 'on'] }, solder] });
    expect(steps[1]?.before.powered).toBe(true);
    expect(stops).toMatchObject([{ kind: 'powered-while-working', step: 'solder', since: 'on' }]);
  });
  it('is off again where the step says so', () => {
    expect(
      stopsOf({
        parts,
        steps: [
          { id: 'on', power: ['off', 'on'] },
          { ...solder, power: ['off', 'off'] },
        ],
      }),
    ).toEqual([]);
  });
  it('is on only after a step that switches on at its end', () => {
    expect(stopsOf({ parts, steps: [{ ...solder, power: ['off', 'on'] }] })).toEqual([]);
    expect(stopsOf({ parts, steps: [{ ...solder, power: ['on', 'on'] }] })).toEqual([
      ['powered-while-working', 'solder'],
    ]);
  });
  it('is no harm to a plug', () => {
    const plug = { id: 'plug', uses: ['D1', 'R1'], power: ['on', 'on'], connects: [['D1.USB', 'R1.USB']] } as const;
    expect(stopsOf({ parts, steps: [plug] })).toEqual([]);
  });
  it('is needed for volts, not for ohms', () => {
    const measure = (expect: string): SmallBuild => ({
      parts,
      steps: [{ id: 'probe', uses: ['D1', 'R1'], power: ['off', 'off'], measures: [['R1.1', 'R1.2', expect]] }],
    });
    expect(stopsOf(measure('= 3.3 V'))).toEqual([['measured-unpowered', 'probe']]);
    expect(stopsOf(measure('> 1 kΩ'))).toEqual([]);
    expect(stopsOf(measure('0 V'))).toEqual([]);
  });
  it('may be on at the end of the step that measures', () => {
    const steps = [
      { id: 'probe', uses: ['D1', 'R1'], power: ['off', 'on'], measures: [['R1.1', 'R1.2', '5 V']] },
    ] as const;
    expect(stopsOf({ parts, steps })).toEqual([]);
  });
});

describe('code', () => {
  it('must be on the board before a pin that it drives is measured', () => {
    const probe = { id: 'probe', uses: ['U1'], power: ['off', 'on'], measures: [['U1.5', 'U1.GND', '3.3 V']] } as const;
    const load = { id: 'load', loads: ['main.cpp'] };
    const ledgerOf = (steps: SmallBuild['steps']) => {
      const { build, facts } = smallBuild({ parts: [{ name: 'U1' }], steps: steps ?? [] });
      const driven: DrivenPin = {
        ref: 'U1',
        pin: '5',
        name: 'LAMP',
        uses: ['output'],
        group: null,
        place: at('main.cpp', 3, '5'),
        usedAt: [],
      };
      return rehearse(build, { ...facts, drivenPins: [driven] });
    };
    expect(ledgerOf([probe, load]).stops).toMatchObject([{ kind: 'code-not-loaded', step: 'probe', arrives: 'load' }]);
    expect(ledgerOf([load, probe]).stops).toEqual([]);
    expect(ledgerOf([probe]).stops).toEqual([]);
    expect(ledgerOf([load, probe]).steps[0]?.after.loaded).toEqual(['main.cpp']);
  });
});

describe('programs', () => {
  it('take the place of the one before, and scripts lie side by side', () => {
    const loaded = (...paths: string[]) =>
      run({ steps: paths.map((path, at) => ({ id: `s${at}`, loads: [path] })) }).steps.at(-1)?.after.loaded;
    expect(loaded('blink.ino', 'lamp/main.cpp')).toEqual(['lamp/main.cpp']);
    expect(loaded('boot.py', 'main.py')).toEqual(['boot.py', 'main.py']);
  });
});

describe('the builder', () => {
  it('is stopped by nothing that was only read from prose', () => {
    expect(stopsOf({ parts: [{ name: 'R1' }], steps: [{ id: 'a', reads: ['R9', 'R7'] }] })).toEqual([]);
  });
  it('has heard the warnings of a step before anything later', () => {
    const { steps } = run({ steps: [{ id: 'a', warning: 'Hot.' }, { id: 'b' }] });
    expect(steps[0]?.before.warned).toEqual([]);
    expect(steps[1]?.before.warned).toMatchObject([{ message: 'Hot.' }]);
  });
  it('looks for a tool that no list names, where there is a list', () => {
    const steps = [{ id: 'a', tools: ['iron', 'crimping tool'] }];
    expect(stopsOf({ tools: ['Soldering iron'], steps })).toEqual([['tool-not-listed', 'a']]);
    expect(stopsOf({ steps })).toEqual([]);
  });
  it('covers the needed tools that steps name', () => {
    expect(run({ tools: ['Soldering iron', 'Tweezers'], steps: [{ id: 'a', tools: ['iron'] }] }).coverage.tools).toBe(
      0.5,
    );
  });
  it('has nothing to cover where the lists are empty', () => {
    expect(run({ steps: [{ id: 'a' }] }).coverage).toEqual({ parts: null, connections: null, tools: null });
  });
});
