import type { Dependency } from '#core/code.ts';
import type { Problem } from '#core/problem.ts';

/** What a manifest tells of the build. */
export interface Manifest {
  readonly dependencies: Dependency[];
  /** The board as the manifest names it; null where it names none, or several. */
  readonly board: string | null;
  /** What else has to be set the same to build it again, by the manifest's own keys. Never a credential. */
  readonly settings: Record<string, string>;
  readonly problems: Problem[];
}
