import type { Place } from './place.ts';

/**
 * How a fact came to be known. Declared and confirmed facts drive the rehearsal; what was only
 * read from prose or proposed alone never halts anyone.
 */
export type Basis = 'declared' | 'read' | 'derived' | 'proposed';

/** One witness for a fact. `confidence` runs from 0 to 1. */
export interface Claim<T> {
  readonly value: T;
  readonly basis: Basis;
  readonly places: readonly Place[];
  readonly confidence: number;
}

/** A fact that one or more witnesses agree on, that two dispute, or that nobody states. */
export type Known<T> =
  | { readonly is: 'confirmed'; readonly claims: readonly [Claim<T>, ...Claim<T>[]] }
  | { readonly is: 'contradicted'; readonly claims: readonly [Claim<T>, ...Claim<T>[]] }
  | { readonly is: 'unknown'; readonly lacking: string };

/** A claim that the maker wrote down as such. */
export function declared<T>(value: T, ...places: Place[]): Claim<T> {
  return { value, basis: 'declared', places, confidence: 1 };
}

/** A fact with one witness. */
export function confirmed<T>(...claims: [Claim<T>, ...Claim<T>[]]): Known<T> {
  return { is: 'confirmed', claims };
}

/** A fact that nobody states. `lacking` names what would settle it. */
export function unknown(lacking: string): Known<never> {
  return { is: 'unknown', lacking };
}

/** The value of a fact as its first witness states it; undefined when not known. */
export function firstValue<T>(known: Known<T>): T | undefined {
  return known.is === 'unknown' ? undefined : known.claims[0].value;
}
