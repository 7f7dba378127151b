import type { Channels } from './matchLight.ts';
import { medianOf } from './matchLight.ts';

/** A shadow leaves at least this much of the code of what it falls on. */
const darkest = 0.4;
/** The logarithms of what it leaves of the three channels lie at most so far apart: the sky's blue gets in. */
const tint = 0.22;
/** Spread of the green, of the full range, up to which a surface is smooth. */
const smooth = 0.035;

/**
 * Whether a changed part of a picture is only lit otherwise: smooth before and after, of the same colour, and at most
 * two and a half times darker or brighter. Pixels by their place, in both pictures.
 */
export function isShadow(
  pixels: readonly number[],
  first: Channels,
  second: Channels,
  contrast: Float32Array,
): boolean {
  const sample = pixels.filter((_, i) => i % 3 === 0);
  if (medianOf(sample.map((at) => contrast[at] ?? 0)) > smooth) return false;
  const ratios = first.planes.map((plane, channel) =>
    medianOf(sample.map((at) => Math.log(((plane[at] ?? 0) + 0.02) / ((second.planes[channel]?.[at] ?? 0) + 0.02)))),
  );
  return Math.max(...ratios.map(Math.abs)) < -Math.log(darkest) && Math.max(...ratios) - Math.min(...ratios) < tint;
}
