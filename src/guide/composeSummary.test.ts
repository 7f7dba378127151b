import { describe, expect, test } from 'vitest';
import { confirmed, declared } from '#core/claim.ts';
import type { Part } from '#core/part.ts';
import type { Settings } from '#core/settings.ts';
import { assembled, part, step } from '../../tests/site/smallBuild.ts';
import { composeGuide } from './composeGuide.ts';
import type { Words } from './guide.ts';

type Told = { readonly hands: number; readonly wait: number } | null;

function blockOf(settings: Partial<Settings>, minutes: readonly Told[], parts: readonly Part[]) {
  const sections = minutes.map((_, i) => step(`s${i}`));
  const facts = Object.fromEntries(minutes.map((told, i) => [`s${i}`, { minutes: told && declared(told) }]));
  const guide = composeGuide(assembled({ settings, sections, facts, build: { parts } }), { code: [] });
  return guide.blocks.find((one) => one.kind === 'summary');
}

/** Sentences of the summary as plain text, by what they are about. */
function summaryOf(settings: Partial<Settings>, minutes: readonly Told[] = [], parts: readonly Part[] = []) {
  const block = blockOf(settings, minutes, parts);
  return Object.fromEntries(block?.sentences.map(({ about, words }) => [about, words.map(plain).join('')]) ?? []);
}

function plain(node: Words): string {
  if ('value' in node) return node.value;
  return 'children' in node ? node.children.map(plain).join('') : '\n';
}

function priced(id: string, amount: number, more: Partial<Part> = {}): Part {
  return part(id, id, { price: { amount, currency: 'EUR', per: 1, date: null }, ...more });
}

describe('the sentences of the summary', () => {
  test('say nothing of what the maker did not say', () => {
    expect(summaryOf({})).toEqual({});
  });

  test('sum the work and the waiting apart, and say when some steps do not tell', () => {
    expect(
      summaryOf({}, [
        { hands: 50, wait: 0 },
        { hands: 25, wait: 1440 },
      ]).time,
    ).toBe('It takes about 1 h 15 min of work and 24 h of waiting.');
    expect(summaryOf({}, [{ hands: 50, wait: 0 }, null]).time).toBe(
      '1 of its 2 steps say how long they take: 50 min of work together.',
    );
    expect(summaryOf({}, [null, null]).time).toBeUndefined();
  });

  test('cost what the parts used cost, by the share of a pack, and say what that stands on', () => {
    const parts = [
      priced('A', 6.8, { price: { amount: 6.8, currency: 'EUR', per: 1, date: '2025-10-01' } }),
      priced('B', 1.2, {
        price: { amount: 1.2, currency: 'EUR', per: 100, date: '2025-11-02' },
        amount: confirmed(declared({ n: 50, unit: 'pcs', approximate: false })),
      }),
    ];
    expect(summaryOf({}, [], parts).cost).toBe(
      'The parts cost about 7.40 EUR by the prices in the parts list, last looked up 2025-11-02; carriage, tools and full packs are not counted.',
    );
  });

  test('count lengths in metres, and leave out other lengths and parts that are not fitted', () => {
    const amount = confirmed(declared({ n: 20, unit: 'cm', approximate: false }));
    const parts = [
      priced('A', 2),
      priced('W', 3, { amount }),
      priced('V', 3, { amount: confirmed(declared({ n: 0.5, unit: 'm', approximate: false })) }),
      part('X', 'X'),
      priced('N', 50, { fitted: false }),
      priced('U', 9, { amount: { is: 'unknown', lacking: 'a count' } }),
    ];
    expect(summaryOf({}, [], parts).cost).toMatch(
      /^The parts cost about 3\.50 EUR by the 2 of 5 parts that have a price;/,
    );
  });

  test('never add two currencies', () => {
    const parts = [priced('A', 2), priced('B', 3, { price: { amount: 3, currency: 'USD', per: 1, date: null } })];
    expect(summaryOf({}, [], parts).cost).toContain('2.00 EUR and 3.00 USD by');
  });

  test.each([
    ['built ×3', 'It has been built 3 times.'],
    ['built x 1', 'It has been built once.'],
    ['Prototype', 'It is a prototype, and may still change.'],
    ['idea', 'It is an idea: nobody has built it yet.'],
    ['replicated', 'Others have built it again from this guide.'],
    ['resting for the winter', 'Where it stands: resting for the winter.'],
  ])('tell of a status %j', (status, sentence) => expect(summaryOf({ status }).status).toBe(sentence));

  test('list skills and supply as the maker words them', () => {
    const told = summaryOf({ skills: ['soldering', 'patience'], supply: 'USB, 5 V' });
    expect(told.skills).toBe('It asks for these skills: soldering and patience.');
    expect(told.supply).toBe('It runs from USB, 5 V.');
  });
});

describe('the totals of the summary', () => {
  const totalsOf = (minutes: readonly Told[], parts: readonly Part[]) => blockOf({}, minutes, parts)?.totals;

  test('sum what every step and every part tells', () => {
    expect(
      totalsOf(
        [
          { hands: 50, wait: 0 },
          { hands: 25, wait: 60 },
        ],
        [priced('A', 6.8), priced('B', 1.2)],
      ),
    ).toEqual({ minutes: { hands: 75, wait: 60 }, cost: { amount: 8, currency: 'EUR' } });
  });

  test('are nobody’s guess: one step without a time, or one part without a price, and there is none', () => {
    const minutes = [{ hands: 50, wait: 0 }, null];
    expect(totalsOf(minutes, [priced('A', 6.8), part('B', 'B', {})])).toEqual({ minutes: null, cost: null });
    const dollars = priced('B', 1.2, { price: { amount: 1.2, currency: 'USD', per: 1, date: null } });
    expect(totalsOf([], [priced('A', 6.8), dollars])).toEqual({ minutes: null, cost: null });
  });
});
