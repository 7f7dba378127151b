import type { Plane } from '../pixels/picture.ts';

/** Luma from which a place is blown, 0 to 1. */
const blown = 250 / 255;
/** A place larger than this share of the picture is a lamp, a paper or a wall, not glare. */
const largestShare = 0.004;
/** Round a reflection, this share of the places beside it is darker than `darker`: it stands out. */
const [outstanding, darker] = [0.5, 200 / 255];

/**
 * Share of the picture in small blown places that stand out from what is round them, 0 to 1: reflections of a lamp on solder, plastic or
 * film. Places are joined by their sides, in the picture at half its size. Truth: drawn spots of known size.
 */
export function measureGlare({ width, height, values }: Plane): number {
  const seen = new Uint8Array(values.length);
  const largest = largestShare * values.length;
  let glare = 0;
  for (let start = 0; start < values.length; start++) {
    if (seen[start] === 1 || (values[start] ?? 0) < blown) continue;
    const { area, rim, dark } = placeFrom(start);
    if (area <= largest && dark >= outstanding * rim) glare += area;
  }
  return glare / values.length;

  /** Walks over one blown place: how large it is, and how many places lie beside it, how many of those dark. */
  function placeFrom(start: number): { area: number; rim: number; dark: number } {
    const open = [start];
    seen[start] = 1;
    let [area, rim, dark] = [0, 0, 0];
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      area++;
      const column = at % width;
      for (const next of [
        column > 0 ? at - 1 : -1,
        column < width - 1 ? at + 1 : -1,
        at - width,
        at + width < width * height ? at + width : -1,
      ]) {
        if (next < 0) continue;
        const value = values[next] ?? 0;
        if (value < blown) {
          rim++;
          // Blur and lossy coding leave a bright seam: look one place further.
          const beyond = values[next + (next - at)] ?? value;
          if (Math.min(value, beyond) < darker) dark++;
        } else if (seen[next] === 0) {
          seen[next] = 1;
          open.push(next);
        }
      }
    }
    return { area, rim, dark };
  }
}
