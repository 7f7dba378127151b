import type { Box } from '#core/place.ts';
import type { Slopes } from './scharr.ts';

export interface Clutter {
  /** Share of what surrounds the subject that is not plain, 0 to 1; the frame's edges count twice. */
  readonly score: number;
  readonly verdict: 'clear' | 'some' | 'heavy';
}

/** Sides of a field, in places of the slopes. */
const side = 8;
/** A change this strong, in Scharr's units of values from 0 to 1, is the edge of a thing: grain of wood is fainter. */
const edge = 0.45;
/** A field with fewer places at edges than this is plain. */
const fewest = 4;
/** Fields this far from the frame, as a share of the picture's sides, lie at its edge. */
const frame = 0.07;
/** Where nobody says what the picture is about, its middle is. */
const middle: Box = { x: 0.2, y: 0.2, width: 0.6, height: 0.6 };
/** From these scores on there is some clutter, or much: chosen by eye on photos of benches. */
const [some, heavy] = [0.15, 0.4];

/** How much else is to be seen round the subject and at the frame's edges. Truth: drawn things of known number. */
export function measureClutter({ width, height, across, down }: Slopes, subject: Box | null): Clutter {
  const { x, y, width: wide, height: high } = subject ?? middle;
  const [columns, rows] = [Math.floor(width / side), Math.floor(height / side)];
  let [busy, all] = [0, 0];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [atX, atY] = [(column + 0.5) / columns, (row + 0.5) / rows];
      const isSubject = atX > x && atX < x + wide && atY > y && atY < y + high;
      if (isSubject) continue;
      const isFrame = Math.min(atX, atY, 1 - atX, 1 - atY) < frame;
      const weight = isFrame ? 2 : 1;
      all += weight;
      if (isBusy(column * side, row * side)) busy += weight;
    }
  }
  const score = all === 0 ? 0 : busy / all;
  if (score >= heavy) return { score, verdict: 'heavy' };
  return { score, verdict: score >= some ? 'some' : 'clear' };

  function isBusy(left: number, top: number): boolean {
    let edges = 0;
    for (let row = top; row < top + side; row++) {
      for (let at = row * width + left, end = at + side; at < end; at++) {
        if ((across[at] ?? 0) ** 2 + (down[at] ?? 0) ** 2 >= edge * edge) edges++;
      }
    }
    return edges >= fewest;
  }
}
