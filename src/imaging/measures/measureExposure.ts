import { luminanceWeights, type Picture } from '../pixels/picture.ts';
import type { Light } from './lightOf.ts';
import type { Evenness } from './measureEvenness.ts';
import { quantileOf } from './quantileOf.ts';

export interface Exposure extends Evenness {
  /**
   * Stops by which what is shown is brighter (above 0) or darker than usual. 0 is where a grey of 18 % beside the bench
   * would be shown at 18 % of full light; a bench or a paper then has about 64 %.
   */
  readonly ev: number;
  /** Share of pixels whose three values are all 5 or less. */
  readonly shadowsClipped: number;
  /** Share of pixels whose three values are all 250 or more. */
  readonly highlightsClipped: number;
  readonly verdict: 'good' | 'dark' | 'bright' | 'uneven';
}

/** What is light in a picture: the 97th percentile of its relative luminance, usually at this share of full light. */
const [lightShare, lightKey] = [0.97, 0.64];
/** Luminance from which light counts as blown, and the stops for each share of the picture that is. */
const [blownFrom, blownStops] = [0.95, 2];
/** Codes at which black and white are cut off, with room for what lossy coding changes. */
const [black, white] = [5, 250];
/** Darker or brighter than this, in stops, or less even than this: chosen on made scenes, see `npm run bench -- pictures`. */
const limits = { dark: -1, bright: 0.85, evenness: 0.3 };

/**
 * Exposure of what is shown: ev = log₂(P₉₇ / 0.64) + 2 · b, with the 97th percentile of relative luminance over 4 × 4
 * pixels and the share b of it from 0.95 on. The light end tells more than the mean: nearly every picture shows a bench,
 * a paper, or something of metal, whereas the mean hangs on how much of it is a dark board. Truth: closed forms in
 * tests/truth/measures.
 */
export function measureExposure(picture: Picture, light: Light, evenness: Evenness): Exposure {
  const luminance = luminanceIn(light);
  const blown = luminance.reduce((sum, value) => sum + (value >= blownFrom ? 1 : 0), 0) / luminance.length;
  const ev = Math.log2(Math.max(quantileOf(luminance, lightShare), 1 / 4096) / lightKey) + blownStops * blown;
  return { ev, ...clippedIn(picture), ...evenness, verdict: verdictOf(ev, evenness.evenness) };
}

function luminanceIn({ rgb }: Light): Float32Array {
  const [red, green, blue] = luminanceWeights;
  const luminance = new Float32Array(rgb.length / 3);
  for (let at = 0, from = 0; at < luminance.length; at++, from += 3) {
    luminance[at] = red * (rgb[from] ?? 0) + green * (rgb[from + 1] ?? 0) + blue * (rgb[from + 2] ?? 0);
  }
  return luminance;
}

function clippedIn({ rgb }: Picture): { shadowsClipped: number; highlightsClipped: number } {
  let [dark, bright] = [0, 0];
  for (let at = 0; at < rgb.length; at += 3) {
    const green = rgb[at + 1] ?? 0;
    if (green > black && green < white) continue;
    const [red, blue] = [rgb[at] ?? 0, rgb[at + 2] ?? 0];
    if (green <= black && red <= black && blue <= black) dark++;
    if (green >= white && red >= white && blue >= white) bright++;
  }
  const pixels = rgb.length / 3;
  return { shadowsClipped: dark / pixels, highlightsClipped: bright / pixels };
}

function verdictOf(ev: number, evenness: number | null): Exposure['verdict'] {
  if (ev < limits.dark) return 'dark';
  if (ev > limits.bright) return 'bright';
  return evenness !== null && evenness < limits.evenness ? 'uneven' : 'good';
}
