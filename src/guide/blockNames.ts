import { digestOf } from '#core/digest.ts';
import type { BlockId } from './guide.ts';

/** Gives every block of one guide its id: the same content under the same parent gets the same id again. */
export interface BlockNames {
  /** An id made of words, such as a step's; a repeat is counted. */
  of(kind: string, words: string): BlockId;
  /** An id for a block that has no name of its own: made of its parent's and a digest of its content. */
  within(parent: BlockId, kind: string, content: unknown): BlockId;
}

export function createBlockNames(): BlockNames {
  const taken = new Set<BlockId>();
  function take(wanted: BlockId): BlockId {
    let id = wanted;
    for (let repeat = 2; taken.has(id); repeat++) id = `${wanted}-${repeat}`;
    taken.add(id);
    return id;
  }
  return {
    of: (kind, words) => take(`${kind}-${words.replace(/\s+/gu, '-')}`),
    within: (parent, kind, content) => take(`${parent}.${kind}-${digestOf(JSON.stringify(content)).slice(0, 8)}`),
  };
}
