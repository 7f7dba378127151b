import type { Box } from '#core/place.ts';
import { deltaE2000 } from '../colour/deltaE2000.ts';
import { labFromLinear } from '../colour/labFromLinear.ts';
import { luminanceWeights } from '../pixels/picture.ts';
import type { Light } from './lightOf.ts';

export interface Cast {
  /** CIEDE2000 between a light grey (half of full light) as the light of the picture shows it and as it should be. */
  readonly deltaE: number;
  /** What red, green and blue are multiplied by in linear light to take the cast away; green by 1. */
  readonly gains: readonly [red: number, green: 1, blue: number];
  readonly verdict: 'neutral' | 'warm' | 'cool' | 'green' | 'magenta';
}

/** Red and blue over green, in stops. */
type Chroma = readonly [red: number, blue: number];

/** Too dark for a colour, or a channel cut off, in linear light. */
const [darkest, brightest] = [0.004, 0.95];
/** Colours further from neutral than this, in stops, are of things, not of the light. */
const reach = 2;
/** Fields of the table of colours to a stop. */
const fieldsPerStop = 20;
const fields = 2 * reach * fieldsPerStop + 1;
/** Widths in stops of the window that climbs to where the colours near neutral crowd, one after the other. */
const windows = [0.7, 0.5, 0.35, 0.25, 0.25, 0.25];
/**
 * How far lights usually lie from neutral, in stops: between warm and cool, as daylight and lamps do, and across that,
 * where hardly any light is but many boards and mats are.
 */
const [warmth, tint] = [0.6, 0.13];
/** Part of the way to an estimate of another kind from which a climb starts as well. */
const otherStarts = 0.7;
/** How likely a light of each colour is, over the table. */
const likelihood = Float64Array.from({ length: fields * fields }, (_, at) => {
  const red = (at % fields) / fieldsPerStop - reach;
  const blue = Math.floor(at / fields) / fieldsPerStop - reach;
  return Math.exp(-(((red - blue) / 2 / warmth) ** 2 + ((red + blue) / 2 / tint) ** 2) / 2);
});
/** A cast below this difference is none: chosen on made scenes, see `npm run bench -- pictures`. */
const plain = 6;

/**
 * Colour of the light. With a grey reference (its box), the mean of that. Without, colours near neutral are taken for
 * greys: in a table of red and blue over green, a window climbs to where they crowd (mean shift). It starts from
 * neutral, from the brightest colours (white patch) and from the sixth-power mean (shades of grey, G. D. Finlayson and
 * E. Trezzi, Color Imaging Conference 12, 2004), and the fullest crowd counts. Colours that hardly any light has, as of green boards, count little. Null where nothing
 * tells a colour. Truth: tests/truth/measures.
 */
export function measureCast(light: Light, grey: Box | null): Cast | null {
  const chroma = grey === null ? climbedChroma(light) : chromaOf(meanIn(light, grey));
  if (chroma === null) return null;
  const [red, blue] = [2 ** chroma[0], 2 ** chroma[1]];
  const luminance = luminanceWeights[0] * red + luminanceWeights[1] + luminanceWeights[2] * blue;
  const share = 0.5 / luminance;
  const lab = labFromLinear(red * share, share, blue * share);
  const deltaE = deltaE2000(lab, labFromLinear(0.5, 0.5, 0.5));
  return { deltaE, gains: [1 / red, 1, 1 / blue], verdict: deltaE < plain ? 'neutral' : hueName(lab.a, lab.b) };
}

/** By the nearest of four hues of CIELAB: between red and yellow, between green and cyan, blue, and between those and red. */
function hueName(a: number, b: number): Cast['verdict'] {
  const hue = ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
  if (hue < 20 || hue >= 330) return 'magenta';
  if (hue < 110) return 'warm';
  return hue < 200 ? 'green' : hue < 305 ? 'cool' : 'magenta';
}

function chromaOf([red, green, blue]: readonly [number, number, number]): Chroma | null {
  if (Math.min(red, green, blue) < darkest / 4) return null;
  return [Math.log2(red / green), Math.log2(blue / green)];
}

/** Mean light in a box, or of all where the box holds no whole place. */
function meanIn({ width, height, rgb }: Light, box: Box): [number, number, number] {
  const [left, top] = [Math.floor(box.x * width), Math.floor(box.y * height)];
  const right = Math.min(width, Math.max(left + 1, Math.ceil((box.x + box.width) * width)));
  const bottom = Math.min(height, Math.max(top + 1, Math.ceil((box.y + box.height) * height)));
  const sum: [number, number, number] = [0, 0, 0];
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) {
      const at = 3 * (row * width + column);
      for (const channel of [0, 1, 2] as const) sum[channel] += rgb[at + channel] ?? 0;
    }
  }
  const count = Math.max(1, (bottom - top) * (right - left));
  return [sum[0] / count, sum[1] / count, sum[2] / count];
}

function climbedChroma(light: Light): Chroma | null {
  const { table, starts } = tableOf(light);
  let best: { chroma: Chroma; crowd: number } | null = null;
  for (const start of starts) {
    const found = climb(table, start);
    if (found === null) continue;
    if (best === null || found.crowd > best.crowd) best = found;
  }
  return best?.chroma ?? null;
}

/** How much there is of each colour, weighted by the square root of its light and by how likely such a light is, and the chromas to start from. */
function tableOf({ rgb }: Light): { table: Float64Array; starts: Chroma[] } {
  const table = new Float64Array(fields * fields);
  const powers: [number, number, number] = [0, 0, 0];
  const white: [number, number, number] = [0, 0, 0];
  let brightness = 0;
  for (let at = 0; at < rgb.length; at += 3) brightness = Math.max(brightness, levelAt(rgb, at));
  // Every second place: colours are to be counted, not found.
  for (let from = 0; from < rgb.length; from += 6) {
    const [red, green, blue] = [rgb[from] ?? 0, rgb[from + 1] ?? 0, rgb[from + 2] ?? 0];
    if (Math.min(red, green, blue) < darkest || Math.max(red, green, blue) > brightest) continue;
    powers[0] += red ** 6;
    powers[1] += green ** 6;
    powers[2] += blue ** 6;
    if (green > 0.8 * brightness) {
      white[0] += red;
      white[1] += green;
      white[2] += blue;
    }
    const column = Math.round((Math.log2(red / green) + reach) * fieldsPerStop);
    const row = Math.round((Math.log2(blue / green) + reach) * fieldsPerStop);
    if (column < 0 || row < 0 || column >= fields || row >= fields) continue;
    const at = row * fields + column;
    table[at] = (table[at] ?? 0) + Math.sqrt(green) * (likelihood[at] ?? 0);
  }
  const shades = chromaOf([powers[0] ** (1 / 6), powers[1] ** (1 / 6), powers[2] ** (1 / 6)]);
  const others = [chromaOf(white), shades].filter((chroma) => chroma !== null);
  return { table, starts: [[0, 0], ...others.map(([red, blue]): Chroma => [otherStarts * red, otherStarts * blue])] };
}

/** Green of a place whose channels are whole; 0 of one that is cut off. */
function levelAt(rgb: Float32Array, at: number): number {
  const green = rgb[at + 1] ?? 0;
  return Math.max(rgb[at] ?? 0, green, rgb[at + 2] ?? 0) > brightest ? 0 : green;
}

function climb(table: Float64Array, start: Chroma): { chroma: Chroma; crowd: number } | null {
  let chroma = start;
  let weight = 0;
  for (const window of windows) {
    let [red, blue] = [0, 0];
    weight = 0;
    for (let at = 0; at < table.length; at++) {
      const amount = table[at] ?? 0;
      if (amount === 0) continue;
      const column = (at % fields) / fieldsPerStop - reach;
      const row = Math.floor(at / fields) / fieldsPerStop - reach;
      const share = amount * Math.exp(-((column - chroma[0]) ** 2 + (row - chroma[1]) ** 2) / (2 * window ** 2));
      weight += share;
      red += share * column;
      blue += share * row;
    }
    if (weight === 0) return null;
    chroma = [red / weight, blue / weight];
  }
  return { chroma, crowd: weight };
}
