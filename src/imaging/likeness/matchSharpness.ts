import { boxMeans } from '../alignment/evenLight.ts';
import { luminanceWeights } from '../pixels/picture.ts';
import { type Channels, cell, medianOf, mediansAround } from './matchLight.ts';

/** Blurs that are tried, as Gaussian sigma in pixels. */
const blurs = [0, 0.8, 1.4, 2.2, 3.4, 5];
/** A blur has to leave this share of the difference at most for each step that it is stronger. */
const gain = 0.93;

/** Both pictures, and how strongly the sharper one had to be blurred in the middle of all places: 0 to 5. */
export interface MatchedSharpness {
  readonly first: Channels;
  readonly second: Channels;
  readonly steps: number;
}

/**
 * Both pictures about as sharp as the softer one, place by place, since depth of field blurs one thing and not another:
 * of each 32 × 32 pixels either the one or the other picture is blurred, by the Gaussian that leaves the least median
 * difference in 96 × 96 pixels round, and by at most one step more than in the middle of all places. Pictures should be
 * in the same light. Both are then blurred once more as much as in the
 * middle: what shook and what is out of focus is no Gaussian.
 */
export function matchSharpness(first: Channels, second: Channels, compared: Uint8Array): MatchedSharpness {
  const stacks = [stackOf(first, lumaOf(first)), stackOf(second, lumaOf(second))] as const;
  const { width, height } = first;
  const restOf = (step: number) => {
    const one = stacks[0].luma(Math.max(0, step));
    const two = stacks[1].luma(Math.max(0, -step));
    const rest = mediansAround(width, height, compared, (at) => Math.abs((one[at] ?? 0) - (two[at] ?? 0)));
    return rest.map((value) => (value + 0.004) / gain ** Math.abs(step));
  };
  const atRest = restOf(0);
  const least = atRest.slice();
  const chosen = Array.from(least, () => 0);
  for (const sign of [1, -1]) {
    // Stronger blurs are worth trying only as long as the last one helped.
    for (let step = 1, helped = true; step < blurs.length && helped; step++) {
      helped = false;
      for (const [place, rest] of restOf(sign * step).entries()) {
        if (rest >= (least[place] ?? 0)) continue;
        least[place] = rest;
        chosen[place] = sign * step;
        helped = true;
      }
    }
  }
  // Where nothing is to be seen, no blur is better than another: the rougher half of the places decides.
  const rough = medianOf(Array.from(atRest));
  const middle = medianOf(chosen.filter((_, place) => (atRest[place] ?? 0) >= rough));
  const held = chosen.map((step) => Math.min(middle + 1, Math.max(middle - 1, step)));
  const steps = Math.abs(middle);
  return {
    first: blurredWhole(stacks[0].blended(held.map((step) => Math.max(0, step))), blurs[steps] ?? 0),
    second: blurredWhole(stacks[1].blended(held.map((step) => Math.max(0, -step))), blurs[steps] ?? 0),
    steps,
  };
}

/** One picture at all blurs, each made when it is first asked for. */
function stackOf(channels: Channels, luma: Float32Array) {
  const { width, height } = channels;
  const lumas = new Map<number, Float32Array>();
  const columns = Math.ceil(width / cell);
  const blended = (steps: readonly number[]): Channels => {
    const used = [...new Set(steps)];
    if (used.length === 1 && used[0] === 0) return channels;
    const blend = (values: Float32Array) => {
      const versions = new Map(used.map((step) => [step, blurred(values, width, height, blurs[step] ?? 0)]));
      return values.map((value, at) => {
        const place = Math.floor(Math.floor(at / width) / cell) * columns + Math.floor((at % width) / cell);
        return versions.get(steps[place] ?? 0)?.[at] ?? value;
      });
    };
    const [red, green, blue] = channels.planes;
    return { width, height, planes: [blend(red), blend(green), blend(blue)] };
  };
  return {
    luma: (step: number) => {
      const known = lumas.get(step) ?? blurred(luma, width, height, blurs[step] ?? 0);
      lumas.set(step, known);
      return known;
    },
    blended,
  };
}

function blurredWhole({ width, height, planes }: Channels, sigma: number): Channels {
  const [red, green, blue] = planes;
  const blur = (values: Float32Array) => blurred(values, width, height, sigma);
  return { width, height, planes: [blur(red), blur(green), blur(blue)] };
}

function lumaOf({ planes: [red, green, blue] }: Channels): Float32Array {
  const [r, g, b] = luminanceWeights;
  return red.map((value, i) => r * value + g * (green[i] ?? 0) + b * (blue[i] ?? 0));
}

/** Three means over squares in a row are nearly a Gaussian of their summed variance (W. Wells, PAMI 8(2), 1986). */
function blurred(values: Float32Array, width: number, height: number, sigma: number): Float32Array {
  if (sigma === 0) return values;
  // A square of 2 r + 1 pixels has the variance ((2 r + 1)² − 1) / 12; the two next to the wanted width are mixed.
  const exact = (Math.sqrt(4 * sigma * sigma + 1) - 1) / 2;
  const [low, high] = [Math.floor(exact), Math.ceil(exact)];
  const boxed = (radius: number) =>
    [1, 2, 3].reduce((plane) => (radius === 0 ? plane : boxMeans(plane, width, height, radius)), values);
  const narrow = boxed(low);
  if (low === high) return narrow;
  const wide = boxed(high);
  const variance = (radius: number) => radius * (radius + 1);
  const share = (sigma * sigma - variance(low)) / (variance(high) - variance(low));
  return narrow.map((value, i) => value * (1 - share) + (wide[i] ?? 0) * share);
}
