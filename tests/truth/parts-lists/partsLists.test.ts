import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Known } from '#core/claim.ts';
import type { Part } from '#core/part.ts';
import type { Amount, Quantity } from '#core/quantity.ts';
import { recogniseTable } from '#formats/csv/recogniseTable.ts';
import { readPartsList } from '#formats/parts/readPartsList.ts';
import { decodeText } from '#formats/text/decodeText.ts';
import expected from './expected.json';

interface ExpectedPart {
  readonly si?: number | string | null;
  readonly [fact: string]: unknown;
}

const styles = Object.entries(
  expected as Record<string, { columns: unknown[]; problemLines?: number[]; parts: ExpectedPart[] }>,
);

function sourceOf(file: string) {
  const decoded = decodeText(file, readFileSync(new URL(file, import.meta.url)), 'h');
  if (!decoded.ok) throw new Error(decoded.problem.message);
  return decoded.source;
}

function told<T>(known: Known<T>, write: (value: T) => string): string | null {
  if (known.is === 'unknown') return null;
  const [first, ...more] = known.claims.map(({ value }) => write(value));
  return known.is === 'confirmed' ? (first ?? null) : [first, ...more].join(', not ');
}

const amountText = ({ n, unit, approximate }: Amount) => `${approximate ? '~' : ''}${n} ${unit}`;
const siText = ({ si }: Quantity) => String(Number(si.toPrecision(6)));

function facts(part: Part): Record<string, unknown> {
  const { price } = part;
  return {
    ...part,
    refs: part.refs.join(' '),
    amount: told(part.amount, amountText),
    si: told(part.value, siText),
    ratings: part.ratings.map(({ text }) => text),
    links: part.links.map(({ kind, url }) => `${kind} ${url}`),
    price: price === null ? null : `${price.amount} ${price.currency ?? '?'} / ${price.per}`,
    line: part.place.line,
  };
}

function siOf(si: number | string | null | undefined): string | null {
  return typeof si === 'number' ? String(si) : (si ?? null);
}

describe.each(styles)('%s', (file, { columns, problemLines = [], parts }) => {
  const source = sourceOf(file);
  const read = readPartsList(source);

  it('is recognised as a parts list', () => {
    expect(recogniseTable(source)).toMatchObject({ kind: 'parts' });
  });
  it('has every column taken for what its heading means', () => {
    expect(read?.list.columns.map(({ meaning }) => meaning)).toEqual(columns);
  });
  it('has every part read as a person reads it', () => {
    const found = read?.list.parts.map(facts) ?? [];
    expect(found).toHaveLength(parts.length);
    for (const [index, part] of parts.entries()) {
      const { si, ...rest } = part;
      expect(found[index]).toMatchObject(rest);
      if ('si' in part) expect(found[index]?.si).toBe(siOf(si));
    }
  });
  it('raises problems only where a person would', () => {
    const lines = read?.problems.map(({ place }) => (place.kind === 'text' ? place.line : 0)) ?? [];
    expect([...new Set(lines)]).toEqual(problemLines);
  });
  it('points each part and each cell at the words it was read from', () => {
    for (const { place, cells } of read?.list.parts ?? []) {
      for (const each of [place, ...Object.values(cells)]) {
        expect(source.text.slice(...each.span)).toBe(each.quote);
        expect(source.text.slice(0, each.span[0]).split(/\r\n|\r|\n/)).toHaveLength(each.line);
      }
    }
  });
});
