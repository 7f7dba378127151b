import type { Pyramid } from './pyramidOf.ts';

/** Share of all blocks that counts as flat at most. */
const flatShare = 0.25;
/** Blocks darker or brighter than this are cut off by black or white, and their noise with it. */
const [darkest, brightest] = [8 / 255, 245 / 255];
/** More blocks than this tell no more. */
const mostBlocks = 900;

/**
 * The flattest blocks of 8 × 8 pixels: those where the picture at an eighth of its size changes least, so that the
 * choice does not hang on the noise that is to be measured in them. Left, top of each in pixels of the full size.
 */
export function findFlat({ 0: full, 3: eighth }: Pyramid): { left: number; top: number }[] {
  const { width, height, values } = eighth;
  const slopes = new Float32Array(values.length).fill(Number.POSITIVE_INFINITY);
  let count = 0;
  for (let row = 1; row < height - 1 && 8 * row + 9 < full.height; row++) {
    for (let column = 1; column < width - 1 && 8 * column + 9 < full.width; column++) {
      const at = row * width + column;
      const value = values[at] ?? 0;
      if (value < darkest || value > brightest) continue;
      const across = (values[at + 1] ?? 0) - (values[at - 1] ?? 0);
      const down = (values[at + width] ?? 0) - (values[at - width] ?? 0);
      slopes[at] = across * across + down * down;
      count++;
    }
  }
  const steepest = slopes.toSorted()[Math.ceil(count * flatShare) - 1] ?? Number.NEGATIVE_INFINITY;
  const every = Math.max(1, Math.round((count * flatShare) / mostBlocks));
  const flat: { left: number; top: number }[] = [];
  for (let at = 0, found = 0; at < slopes.length; at++) {
    if ((slopes[at] ?? 0) > steepest || found++ % every !== 0) continue;
    flat.push({ left: 8 * (at % width), top: 8 * Math.floor(at / width) });
  }
  return flat;
}
