import type { Key } from './key.ts';

/** When the tool first saw a fact with a given digest. */
export interface Change {
  readonly key: Key;
  readonly digest: string;
  /** ISO 8601 instant. */
  readonly firstSeen: string;
}
