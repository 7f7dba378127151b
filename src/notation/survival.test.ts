import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type QuantityKind, siUnits } from '#core/quantity.ts';
import { parseAmount } from './amount.ts';
import { parseCapacitorCode, parseColourBands, parseEia96, parseSmdResistorCode } from './codes.ts';
import { parseDate } from './dates.ts';
import { findDurations } from './findDurations.ts';
import { findMoney } from './findMoney.ts';
import { parseItem, splitItems } from './items.ts';
import { parseMoney } from './money.ts';
import { slugOf, tokensOf } from './names.ts';
import { comparePins, parseEndpoint, parseJoin, parsePin, parseWiringEnd } from './pins.ts';
import { isRef, parseRefs, refClass } from './refs.ts';
import { findQuantities, parseValue, parseValueCell } from './value.ts';

const kinds = [undefined, ...(Object.keys(siUnits) as QuantityKind[])];
const refs = new Set(['U1', 'R1']);

const readers: Record<string, (text: string) => unknown> = {
  parseValue: (text) => kinds.map((kind) => parseValue(text, { kind })),
  parseValueCell: (text) =>
    [undefined, 'resistance' as const, 'capacitance' as const].map((kind) => parseValueCell(text, { kind })),
  findQuantities,
  parseCapacitorCode,
  parseSmdResistorCode,
  parseEia96,
  parseColourBands: (text) => parseColourBands(text.split(' ')),
  parseRefs,
  isRef,
  refClass,
  parsePin,
  comparePins: (text) => comparePins(text, 'D5'),
  parseEndpoint: (text) => parseEndpoint(text, refs),
  parseWiringEnd,
  parseJoin: (text) => parseJoin(text, refs),
  splitItems,
  parseItem,
  parseAmount,
  parseMoney,
  findMoney,
  findDurations,
  parseDate,
  slugOf,
  tokensOf,
};

/** Texts like what people write, put together at random, and texts of any characters at all. */
const pieces = [
  '4',
  '1000',
  '.',
  ',',
  ' ',
  'k',
  'R',
  'V',
  'Ω',
  'µ',
  '±',
  '−',
  '-',
  '–',
  '/',
  '½',
  '³',
  'R1',
  'U1.D5',
  ' to ',
  '(',
  ')',
  '`',
  '×',
  '$',
  '€',
  'EUR',
  'Nov',
  ':',
  '%',
  'e9',
  '\u0000',
  '\ud800',
  '😀',
  '𝟙',
  '٣',
];
const texts = fc.oneof(
  fc.array(fc.constantFrom(...pieces), { maxLength: 12 }).map((parts) => parts.join('')),
  fc.string({ unit: 'binary' }),
  fc.string({ unit: 'grapheme', maxLength: 40 }),
);

describe.each(Object.entries(readers))('%s', (_, reader) => {
  it('answers any text with the same answer each time, and with no number that is not finite', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const answer = reader(text);
        expect(reader(text)).toEqual(answer);
        expect(notFinite(answer)).toBe(false);
      }),
      { seed: 14, numRuns: 200 },
    );
  });

  it('answers very long texts within a moment', () => {
    for (const piece of [...pieces, 'a', '1 ', ' (', 'R1-', 'a,', '. ']) {
      const text = piece.repeat(Math.ceil(10_000 / piece.length));
      const started = performance.now();
      reader(text);
      reader(`R1 ${text}!`);
      expect(performance.now() - started, JSON.stringify(piece)).toBeLessThan(1500);
    }
  });
});

function notFinite(answer: unknown): boolean {
  if (typeof answer === 'number') return !Number.isFinite(answer);
  return typeof answer === 'object' && answer !== null && Object.values(answer).some(notFinite);
}
