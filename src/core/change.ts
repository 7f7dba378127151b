import type { Key } from './key.ts';

/** When the tool first saw a fact with a given digest. */
export interface Change {
  readonly key: Key;
  readonly digest: string;
  /** ISO 8601 instant. */
  readonly firstSeen: string;
}

/** The digest that stands for a fact that is no longer there. */
export const gone = 'gone';
