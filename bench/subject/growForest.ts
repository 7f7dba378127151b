import { seededRandom } from '#imaging/geometry/seededRandom.ts';
import type { Clues } from '#imaging/subject/cluesOf.ts';

/** A picture's clues, and for each cell whether it lies in the labelled box: 1 or 0. */
export interface Labelled {
  readonly clues: Clues;
  readonly isInside: Uint8Array;
}

const trees = 60;
const depth = 3;
const rate = 0.15;
/** Added to the weight of a leaf, so that few cells decide little. */
const caution = 20;
const cellsOfPicture = 400;
const bins = 32;

/**
 * Small decision trees, each grown on what those before it leave open, by the second-order gain of the logistic loss over
 * 32 bins a clue (J. Friedman, Annals of Statistics 29(5), 2001; T. Chen and C. Guestrin, KDD 2016, section 2.2). Each
 * tree sees half of the clues and seven tenths of the cells; every picture gives as many cells. The same input gives the
 * same trees, written as chancesOf reads them.
 */
export function growForest(pictures: readonly Labelled[]): string[] {
  const random = seededRandom(1);
  const names = [...(pictures[0]?.clues.keys() ?? [])];
  const cells = pictures.flatMap((picture) =>
    Array.from({ length: cellsOfPicture }, () => ({ picture, cell: Math.floor(random() * picture.isInside.length) })),
  );
  const bounds: number[][] = [];
  const binOf = names.map((name, clue) => {
    const values = Float32Array.from(cells, ({ picture, cell }) => picture.clues.get(name)?.[cell] ?? 0);
    const sorted = values.slice().sort();
    const steps = Array.from({ length: bins - 1 }, (_, n) => sorted[Math.floor(((n + 1) * sorted.length) / bins)] ?? 0);
    const cuts = steps.filter((value, n) => n === 0 || value > (steps[n - 1] ?? 0));
    bounds[clue] = cuts;
    return Uint8Array.from(values, (value) => cuts.filter((cut) => value >= cut).length);
  });
  const inside = Uint8Array.from(cells, ({ picture, cell }) => picture.isInside[cell] ?? 0);
  const score = new Float32Array(cells.length);
  const [slope, bend] = [new Float32Array(cells.length), new Float32Array(cells.length)];
  const grown: string[] = [];
  while (grown.length < trees) {
    for (let at = 0; at < cells.length; at++) {
      const chance = 1 / (1 + Math.exp(-(score[at] ?? 0)));
      slope[at] = (inside[at] ?? 0) - chance;
      bend[at] = chance * (1 - chance);
    }
    const seen = names.map((_, clue) => clue).filter(() => random() < 0.5);
    const held = Uint8Array.from(cells, () => (random() < 0.7 ? 1 : 0));
    const grow = (members: readonly number[], levels: number): string => {
      const using = members.filter((at) => held[at] === 1);
      const total = { slope: sumOf(slope, using), bend: sumOf(bend, using) };
      const split = levels === 0 || using.length < 200 ? null : bestSplit(using, total, seen);
      if (split === null) {
        const value = Number(((rate * total.slope) / (total.bend + caution)).toFixed(4));
        for (const at of members) score[at] = (score[at] ?? 0) + value;
        return String(value);
      }
      const isBelow = (at: number) => (binOf[split.clue]?.[at] ?? 0) <= split.bin;
      const bound = Number((bounds[split.clue]?.[split.bin] ?? 0).toPrecision(4));
      const below = grow(members.filter(isBelow), levels - 1);
      return `${names[split.clue]} ${bound} ${below} ${grow(
        members.filter((at) => !isBelow(at)),
        levels - 1,
      )}`;
    };
    grown.push(
      grow(
        cells.map((_, at) => at),
        depth,
      ),
    );
  }
  return grown;

  function bestSplit(using: readonly number[], total: { slope: number; bend: number }, clues: readonly number[]) {
    let best: { clue: number; bin: number; gain: number } | null = null;
    for (const clue of clues) {
      const [slopes, bends] = [new Float64Array(bins), new Float64Array(bins)];
      for (const at of using) {
        const bin = binOf[clue]?.[at] ?? 0;
        slopes[bin] = (slopes[bin] ?? 0) + (slope[at] ?? 0);
        bends[bin] = (bends[bin] ?? 0) + (bend[at] ?? 0);
      }
      let [below, weight] = [0, 0];
      for (let bin = 0; bin < (bounds[clue]?.length ?? 0); bin++) {
        below += slopes[bin] ?? 0;
        weight += bends[bin] ?? 0;
        if (weight < 10 || total.bend - weight < 10) continue;
        const gain =
          below ** 2 / (weight + caution) +
          (total.slope - below) ** 2 / (total.bend - weight + caution) -
          total.slope ** 2 / (total.bend + caution);
        if (gain > (best?.gain ?? 2)) best = { clue, bin, gain };
      }
    }
    return best;
  }
}

function sumOf(values: Float32Array, members: readonly number[]): number {
  return members.reduce((sum, at) => sum + (values[at] ?? 0), 0);
}
