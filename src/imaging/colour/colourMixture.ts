/** A few colours that cells have in common, each with its share of them and how far they scatter around it. */
export type ColourMixture = readonly {
  readonly l: number;
  readonly a: number;
  readonly b: number;
  /** 0 to 1, of the cells that the mixture was made of. */
  readonly share: number;
  /** Mean square of the distance in one of the three axes. */
  readonly variance: number;
}[];

interface Colours {
  readonly l: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/**
 * At most `most` colours of the given cells, by k-means (S. Lloyd, IEEE IT 28(2), 1982) from seeds each as far as
 * possible from those before (T. Gonzalez, TCS 38, 1985), the first nearest to the mean: no chance is involved.
 */
export function colourMixture({ l, a, b }: Colours, cells: Uint32Array, most: number): ColourMixture {
  const count = cells.length;
  const points = { l: pick(l, cells), a: pick(a, cells), b: pick(b, cells) };
  const meanOf = (values: Float32Array) => values.reduce((sum, value) => sum + value, 0) / count;
  let centres = [{ l: meanOf(points.l), a: meanOf(points.a), b: meanOf(points.b) }];
  const nearest = new Float32Array(count).fill(Number.POSITIVE_INFINITY);
  while (centres.length < most) {
    const last = centres[centres.length - 1] ?? { l: 0, a: 0, b: 0 };
    let far = 0;
    for (let i = 0; i < count; i++) {
      nearest[i] = Math.min(nearest[i] ?? 0, squareTo(points, i, last));
      if ((nearest[i] ?? 0) > (nearest[far] ?? 0)) far = i;
    }
    if ((nearest[far] ?? 0) < alike * alike) break;
    centres.push({ l: points.l[far] ?? 0, a: points.a[far] ?? 0, b: points.b[far] ?? 0 });
  }
  let groups: { l: number; a: number; b: number; square: number; count: number }[] = [];
  for (let round = 0; round < rounds; round++) {
    groups = centres.map(() => ({ l: 0, a: 0, b: 0, square: 0, count: 0 }));
    for (let i = 0; i < count; i++) {
      let best = 0;
      let least = Number.POSITIVE_INFINITY;
      for (let k = 0; k < centres.length; k++) {
        const square = squareTo(points, i, centres[k] ?? { l: 0, a: 0, b: 0 });
        if (square >= least) continue;
        best = k;
        least = square;
      }
      const group = groups[best];
      if (group === undefined) continue;
      group.l += points.l[i] ?? 0;
      group.a += points.a[i] ?? 0;
      group.b += points.b[i] ?? 0;
      group.square += least;
      group.count++;
    }
    groups = groups.filter((group) => group.count > 0);
    centres = groups.map((group) => ({
      l: group.l / group.count,
      a: group.a / group.count,
      b: group.b / group.count,
    }));
  }
  return groups.map((group, k) => ({
    ...(centres[k] ?? { l: 0, a: 0, b: 0 }),
    share: group.count / count,
    variance: Math.max(leastVariance, group.square / group.count / 3),
  }));
}

/** Surprise at a colour: −log of its density under the mixture, lower for a likelier one. */
export function surpriseAt(mixture: ColourMixture, l: number, a: number, b: number): number {
  let density = 1e-12;
  for (const each of mixture) {
    const square = (l - each.l) ** 2 + (a - each.a) ** 2 + (b - each.b) ** 2;
    density += (each.share / each.variance ** 1.5) * Math.exp(-square / (2 * each.variance));
  }
  return -Math.log(density);
}

const rounds = 6;
/** Colours nearer to each other than this, in units of CIELAB, are not told apart. */
const alike = 8;
/** A colour of a matt surface scatters by about three units of CIELAB in any case. */
const leastVariance = 9;

function pick(values: Float32Array, cells: Uint32Array): Float32Array {
  return Float32Array.from(cells, (cell) => values[cell] ?? 0);
}

function squareTo({ l, a, b }: Colours, i: number, to: { l: number; a: number; b: number }): number {
  return ((l[i] ?? 0) - to.l) ** 2 + ((a[i] ?? 0) - to.a) ** 2 + ((b[i] ?? 0) - to.b) ** 2;
}
