import { type Change, gone } from '#core/change.ts';
import type { Key } from '#core/key.ts';

/** A fact that became another one, or went away, after the tool had first seen it. */
export interface LateChange {
  readonly key: Key;
  /** ISO 8601 instant at which it was first seen as it is now. */
  readonly at: string;
  readonly isGone: boolean;
}

/** What the history tells of each fact: when it last changed, and which changed at all since they were first seen. */
export interface Timeline {
  readonly late: readonly LateChange[];
  /** When each fact was first seen as it is now. */
  readonly since: ReadonlyMap<Key, string>;
}

/**
 * Reads the history as a timeline; lines are in the order in which they were added. A fact that went away and came
 * back as it was (a file that could not be read for a while) has not changed.
 */
export function changesOf(history: readonly Change[]): Timeline {
  const states = new Map<Key, State>();
  for (const change of history) states.set(change.key, after(states.get(change.key), change));
  const late = [...states].flatMap(([key, { at, isFirst, digest }]) =>
    isFirst ? [] : [{ key, at, isGone: digest === gone }],
  );
  return {
    late: late.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)),
    since: new Map([...states].map(([key, { at }]) => [key, at])),
  };
}

interface State {
  readonly digest: string;
  readonly at: string;
  readonly isFirst: boolean;
  /** As it was before it went away. */
  readonly before: State | null;
}

function after(state: State | undefined, { digest, firstSeen }: Change): State {
  if (state === undefined) return { digest, at: firstSeen, isFirst: true, before: null };
  if (state.before?.digest === digest) return state.before;
  return { digest, at: firstSeen, isFirst: false, before: digest === gone ? state : null };
}
