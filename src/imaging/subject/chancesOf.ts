import { assert } from '#core/failure.ts';
import type { Clues } from './cluesOf.ts';

/**
 * A sum of small decision trees, each written from its root: a clue's name and a bound, then what holds below the bound,
 * then what holds otherwise; a number alone is a leaf, added to the logarithm of the odds.
 */
export type Forest = readonly string[];

/** How likely each cell lies within the subject, 0 to 1: the logistic function of what the trees add up to. */
export function chancesOf(forest: Forest, clues: Clues): Float32Array {
  const trees = forest.map((tree) => readTree(tree, clues));
  const count = [...clues.values()][0]?.length ?? 0;
  const chances = new Float32Array(count);
  for (let cell = 0; cell < count; cell++) {
    let sum = 0;
    for (const root of trees) {
      let node = root;
      while (node.values !== null) node = (node.values[cell] ?? 0) < node.bound ? node.below : node.otherwise;
      sum += node.bound;
    }
    chances[cell] = 1 / (1 + Math.exp(-sum));
  }
  return chances;
}

/** A leaf has no values, and its bound is what it adds. */
type Node = Leaf | { values: Float32Array; bound: number; below: Node; otherwise: Node };
interface Leaf {
  values: null;
  bound: number;
}

function readTree(tree: string, clues: Clues): Node {
  const words = tree.split(' ');
  let at = 0;
  const readNode = (): Node => {
    const word = words[at++] ?? '';
    if (word !== '' && Number.isFinite(Number(word))) return { values: null, bound: Number(word) };
    const values = clues.get(word);
    assert(values !== undefined, `no clue is named “${word}”`);
    const bound = Number(words[at++]);
    const below = readNode();
    return { values, bound, below, otherwise: readNode() };
  };
  return readNode();
}
