import { describe, expect, it } from 'vitest';
import type { Judged } from '#core/assembled.ts';
import { digestOf } from '#core/digest.ts';
import type { Settings } from '#core/settings.ts';
import { rehearse } from '#rehearsal/rehearse.ts';
import { at, type SmallBuild, smallBuild } from '../../tests/checks/smallBuild.ts';
import { type Check, defineCheck, type FindingDraft } from './defineCheck.ts';
import { findingsOfStep, judge, rehearsalChecks } from './judge.ts';
import { checks } from './registry.ts';

const judgedFrom = (small: SmallBuild, settings: Partial<Settings> = {}): Judged => {
  const { build, facts } = smallBuild(small);
  const set = { ...build, settings: { ...build.settings, ...settings } };
  return { build: set, facts, ledger: rehearse(set, facts), asOf: '2026-01-01' };
};

const draft = (over: Partial<FindingDraft> = {}): FindingDraft => ({
  subjects: ['part:R1'],
  sides: [at('guide.md', 2, '470 Ω'), at('parts.csv', 2, '330 Ω')],
  message: 'Found 470 Ω, expected 330 Ω.',
  consequence: 'It glows less.',
  remedy: 'Correct one.',
  ...over,
});

const checkOf = (run: Check['run'], over: Partial<Check> = {}): Check =>
  defineCheck({
    id: 'made-up',
    title: 'A made-up check.',
    weight: 'halts',
    audience: 'builder',
    why: 'For this test.',
    basis: 'common practice',
    needs: { subject: [], witnesses: [] },
    run,
    examples: { passes: [], fails: [] },
    ...over,
  });

const finding = (...drafts: FindingDraft[]) => checkOf(() => drafts);
const sound: SmallBuild = { parts: [{ name: 'R1' }], steps: [{ id: 'fit', uses: ['R1'] }] };

describe('judge', () => {
  it('names a finding by its check and its subjects, and digests what each side says', () => {
    const { findings } = judge(judgedFrom(sound), { checks: [finding(draft())] });
    expect(findings[0]?.id).toBe('made-up:part:R1');
    expect(findings[0]?.sides.map(({ digest }) => digest)).toEqual([digestOf('470 Ω'), digestOf('330 Ω')]);
  });
  it('keeps the name when words move to another line, and tells two findings on one subject apart', () => {
    const moved = draft({ sides: [at('guide.md', 7, '470 Ω'), at('parts.csv', 2, '330 Ω')] });
    const names = (drafts: FindingDraft[]) =>
      judge(judgedFrom(sound), { checks: [finding(...drafts)] }).findings.map(({ id }) => id);
    expect(names([moved])).toEqual(names([draft()]));
    expect(
      new Set(names([draft(), draft({ sides: [at('guide.md', 9, '1 kΩ')] }), draft({ mark: 'x' }), draft()])).size,
    ).toBe(4);
  });
  it('adds the step in whose text a side lies', () => {
    const { findings } = judge(judgedFrom(sound), { checks: [finding(draft())] });
    expect(findings[0]?.subjects).toEqual(['part:R1', 'step:fit']);
    expect(findingsOfStep(findings, 'fit')).toHaveLength(1);
    expect(findingsOfStep(findings, 'other')).toHaveLength(0);
  });
  it('lets what was only read or proposed halt nobody', () => {
    const weights = (['declared', 'derived', 'read', 'proposed'] as const).map(
      (basis) => judge(judgedFrom(sound), { checks: [finding(draft({ basis }))] }).findings[0]?.weight,
    );
    expect(weights).toEqual(['halts', 'halts', 'slows', 'slows']);
  });
  it('goes on when a check breaks, and says why it failed', () => {
    const broken = checkOf(
      function* () {
        yield draft();
        throw new Error('a hole in the floor');
      },
      { id: 'broken' },
    );
    const { findings, ran } = judge(judgedFrom(sound), { checks: [broken, finding(draft())] });
    expect(ran).toEqual([
      { check: 'broken', outcome: 'failed', why: 'a hole in the floor' },
      { check: 'made-up', outcome: 'ran', why: '' },
    ]);
    expect(findings).toHaveLength(1);
  });
  it('does not run a check without its subject, and cannot tell without a witness', () => {
    const never = () => {
      throw new Error('must not run');
    };
    const noWiring = checkOf(never, { id: 'a', needs: { subject: ['wiring'], witnesses: [] } });
    const noCode = checkOf(never, { id: 'b', needs: { subject: ['parts'], witnesses: ['code'] } });
    expect(judge(judgedFrom(sound), { checks: [noWiring, noCode] }).ran).toEqual([
      { check: 'a', outcome: 'does-not-apply', why: 'there is no wiring table' },
      { check: 'b', outcome: 'cannot-tell', why: 'there is no code' },
    ]);
  });
  it('keeps the findings of a check that cannot tell the rest', () => {
    const half = checkOf(() => [draft(), { cannotTell: 'the board is not known' }]);
    const { findings, ran } = judge(judgedFrom(sound), { checks: [half] });
    expect(findings).toHaveLength(1);
    expect(ran).toEqual([{ check: 'made-up', outcome: 'cannot-tell', why: 'the board is not known' }]);
  });
  it('leaves an accepted finding out until one side says something else', () => {
    const digests = [digestOf('470 Ω'), digestOf('330 Ω')];
    const accepted = [{ finding: 'made-up:part:R1', reason: 'both work', digests }];
    const open = (sides: FindingDraft['sides']) =>
      judge(judgedFrom(sound, { accepted }), { checks: [finding(draft({ sides }))] });
    expect(open(draft().sides).findings).toEqual([]);
    expect(open(draft().sides).verdict).toBe('buildable');
    expect(open([at('guide.md', 2, '480 Ω'), at('parts.csv', 2, '330 Ω')]).findings).toHaveLength(1);
    expect(open([at('guide.md', 2, '470 Ω')]).findings).toHaveLength(1);
  });
  it('lowers a dismissed rule by one weight, unless it guards what cannot be taken back', () => {
    const weight = (over: Partial<Check>) =>
      judge(judgedFrom(sound, { dismissedRules: ['made-up'] }), { checks: [checkOf(() => [draft()], over)] })
        .findings[0]?.weight;
    expect([weight({}), weight({ weight: 'slows' }), weight({ weight: 'tidy' }), weight({ firm: true })]).toEqual([
      'slows',
      'tidy',
      'tidy',
      'halts',
    ]);
  });
  it('says of a finding for which reason it was accepted before a side changed', () => {
    const accepted = [{ finding: 'made-up:part:R1', reason: 'both work', digests: [digestOf('330 Ω')] }];
    const { findings, accepted: quiet } = judge(judgedFrom(sound, { accepted }), { checks: [finding(draft())] });
    expect(findings[0]?.lapsed).toBe('both work');
    expect(quiet).toEqual([]);
  });
  it('lists what is accepted beside what is open', () => {
    const accepted = [{ finding: 'made-up:part:R1', reason: 'meant', digests: [digestOf('470 Ω'), digestOf('330 Ω')] }];
    const judged = judge(judgedFrom(sound, { accepted }), {
      checks: [finding(draft(), draft({ subjects: ['part:z'] }))],
    });
    expect(judged.accepted.map(({ finding: one, reason }) => [one.id, reason])).toEqual([['made-up:part:R1', 'meant']]);
    expect(judged.findings.map(({ id, lapsed }) => [id, lapsed])).toEqual([['made-up:part:z', null]]);
  });
  it('lowers a rule that was refused twice as finding no fault, not one that was lived with, and says so', () => {
    const two = (reason: string) =>
      ['a', 'b'].map((name) => ({ finding: `made-up:part:${name}`, reason, digests: [] }));
    const run = (accepted: Settings['accepted'], over: Partial<Check> = {}) =>
      judge(judgedFrom(sound, { accepted }), { checks: [checkOf(() => [draft()], over)] });
    expect(run(two('no-fault'))).toMatchObject({ findings: [{ weight: 'slows' }], lowered: ['made-up'] });
    expect(run(two('no-fault').slice(1))).toMatchObject({ findings: [{ weight: 'halts' }], lowered: [] });
    expect(run(two('known'))).toMatchObject({ findings: [{ weight: 'halts' }], lowered: [] });
    expect(run(two('no-fault'), { firm: true })).toMatchObject({ findings: [{ weight: 'halts' }], lowered: [] });
  });
  it('puts what breaks or hurts before its like, and what only the publisher minds last unless asked for', () => {
    const made = (id: string, over: Partial<Check>) => checkOf(() => [draft()], { id, ...over });
    const all = [
      made('for-press', { audience: 'publisher' }),
      made('plain-one', { weight: 'slows' }),
      made('burns-it', { weight: 'slows', grave: true }),
      made('stops-here', {}),
    ];
    const order = (audience: 'builder' | 'publisher') =>
      judge(judgedFrom(sound), { checks: all, for: audience }).findings.map(({ check }) => check);
    expect(order('builder')).toEqual(['stops-here', 'burns-it', 'plain-one', 'for-press']);
    expect(order('publisher')).toEqual(['for-press', 'stops-here', 'burns-it', 'plain-one']);
  });
  it('puts the gravest first, and within a weight what a reader meets first', () => {
    const places = [at('parts.csv', 2, 'c'), at('guide.md', 5, 'b'), at('guide.md', 2, 'a')];
    const drafts = places.map((place) => draft({ sides: [place], subjects: [`part:${place.quote}`], weight: 'slows' }));
    const { findings } = judge(judgedFrom(sound), { checks: [finding(...drafts, draft({ subjects: ['part:z'] }))] });
    expect(findings.map(({ subjects }) => subjects[0])).toEqual(['part:z', 'part:a', 'part:b', 'part:c']);
  });
});

describe('the verdict', () => {
  const verdict = (small: SmallBuild, check: Check | null = null, audience?: 'publisher') =>
    judge(judgedFrom(small), { checks: check === null ? [] : [check], ...(audience && { for: audience }) }).verdict;

  it('is buildable where the steps declare at least half of what is listed', () => {
    expect(verdict(sound)).toBe('buildable');
    expect(verdict({ ...sound, parts: [{ name: 'R1' }, { name: 'R2' }] })).toBe('buildable');
  });
  it('is never a pass by silence', () => {
    expect(verdict({})).toBe('not-enough-told');
    expect(verdict({ parts: [{ name: 'R1' }] })).toBe('not-enough-told');
    expect(verdict({ steps: [{ id: 'fit' }] })).toBe('not-enough-told');
    expect(verdict({ ...sound, parts: [{ name: 'R1' }, { name: 'R2' }, { name: 'R3' }] })).toBe('not-enough-told');
    expect(verdict({ ...sound, wiring: [['R1.1', 'D1.A']] })).toBe('not-enough-told');
  });
  it('halts for a builder only at what concerns a builder', () => {
    expect(verdict(sound, finding(draft()))).toBe('halts');
    expect(
      verdict(
        sound,
        checkOf(() => [draft()], { weight: 'slows' }),
      ),
    ).toBe('buildable');
    const forPublisher = checkOf(() => [draft()], { audience: 'publisher' });
    expect(verdict(sound, forPublisher)).toBe('buildable');
    expect(verdict(sound, forPublisher, 'publisher')).toBe('halts');
  });
});

describe('the registry', () => {
  it('holds checks of distinct names in plain words', () => {
    const ids = checks.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(?:-[a-z]+)+$/);
  });
  it('tells which checks speak for the simulated builder', () => {
    expect(rehearsalChecks.has('used-before-made')).toBe(true);
    expect(rehearsalChecks.has('secret-in-files')).toBe(false);
  });
});
