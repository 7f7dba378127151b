import type { Claim } from '#core/claim.ts';
import type { TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { WrittenFact } from '#core/step.ts';
import { splitItems } from '#notation/items.ts';
import { placeInside } from '../placeInside.ts';

/** What one written fact says, and what of it could not be read as its label promises. */
export interface Reading<T> {
  readonly claims: readonly Claim<T>[];
  readonly problems: readonly Problem[];
}

/** One item of a fact, without the markup round it. */
export interface FactItem {
  readonly text: string;
  readonly place: TextPlace;
}

/** The items of a fact, each with its place. */
export function itemsOf(fact: WrittenFact): FactItem[] {
  return splitItems(fact.value).map(({ text, start, end }) => {
    const mark = /^(\*\*|\*|`)(?=.)(.*)\1$/s.exec(text);
    const link = /^\[([^\]]*)\]\([^)]*\)$/.exec(text);
    const inner = mark?.[2] ?? link?.[1] ?? text;
    const lead = mark?.[1]?.length ?? (link === null ? 0 : 1);
    const place = placeInside(fact.place, start + lead, lead === 0 ? end : start + lead + inner.length);
    return { text: inner, place };
  });
}

/** Several readings as one. */
export function joinReadings<T>(readings: readonly Reading<T>[]): Reading<T> {
  return {
    claims: readings.flatMap(({ claims }) => claims),
    problems: readings.flatMap(({ problems }) => problems),
  };
}

/** A message without the marks of emphasis, code and links. */
export function plainMessage(text: string): string {
  return text
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/(\*\*|\*)(?=\S)(.*?\S)\1/g, '$2')
    .replace(/`([^`]*)`/g, '$1')
    .trim();
}
