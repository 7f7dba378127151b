import type { Build } from './build.ts';
import type { Facts } from './facts.ts';
import type { Finding } from './finding.ts';
import type { Ledger } from './ledger.ts';

/** Everything that is known of a build at one date: what checks judge. */
export interface Judged {
  readonly build: Build;
  readonly facts: Facts;
  readonly ledger: Ledger;
  /** ISO 8601 date on which it is judged. */
  readonly asOf: string;
}

/** Everything that a guide is composed from. */
export interface Assembled extends Judged {
  readonly findings: readonly Finding[];
}
