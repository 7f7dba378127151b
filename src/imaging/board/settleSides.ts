import { type Lab, labFromLinear } from '../colour/labFromLinear.ts';
import type { Four } from '../geometry/homographyOfFour.ts';
import type { ImagePoint } from '../geometry/points.ts';
import { linearOf, type Picture } from '../pixels/picture.ts';
import { type Line, lineAlong, lineThrough, meetingOf } from './lines.ts';

/** Four corners moved to where the sides are seen, and how well they are seen. */
export interface Settled {
  readonly corners: Four;
  /** Of each side, the share of places along it at which the colour changes within a pixel or so of the line, 0 to 1. */
  readonly seen: readonly number[];
  /** Of each side, the colour just inside it. */
  readonly colours: readonly Lab[];
}

/**
 * Moves each of four sides to where the board's colour ends. Across a side, at places along it, the difference from the
 * colour just inside is read; it steps up where the board ends, whatever comes after: its cut edge, its shadow, the
 * ground. The place of the step is that of the best fit by two levels, and a line is laid along these places. `reach` is
 * how far from the given side is looked, in pixels. Null where a side is not seen or sides do not meet.
 */
export function settleSides(picture: Picture, corners: Four, reach: number): Settled | null {
  const lines: Line[] = [];
  const seen: number[] = [];
  const colours: Lab[] = [];
  for (let index = 0; index < 4; index++) {
    const [from, to] = [corners[index], corners[(index + 1) % 4]];
    if (from === undefined || to === undefined) return null;
    const side = settleSide(picture, from, to, reach);
    if (side === null) return null;
    lines.push(side.line);
    seen.push(side.seen);
    colours.push(side.colour);
  }
  const moved = lines.map((line, index) => {
    const before = lines[(index + 3) % 4];
    return before === undefined ? null : meetingOf(before, line);
  });
  const [first, second, third, fourth] = moved;
  if (!first || !second || !third || !fourth) return null;
  return { corners: [first, second, third, fourth], seen, colours };
}

const places = 32;
/** Samples to each side of where a side is looked for. */
const mostSteps = 10;
/** The ends of a side are rounded or hidden more often than its middle. */
const margin = 0.07;
/** Differences from the board's colour above this all say the same: no longer the board. */
const plainlyOther = 24;

function settleSide(
  picture: Picture,
  from: ImagePoint,
  to: ImagePoint,
  reach: number,
): { readonly line: Line; readonly seen: number; readonly colour: Lab } | null {
  const long = Math.hypot(to.column - from.column, to.row - from.row);
  if (!(long > 4)) return null;
  const outward = lineThrough(from, to);
  const steps = Math.min(mostSteps, Math.max(4, Math.round(reach)));
  const stride = reach / steps;
  const profiles = Array.from({ length: places }, (_, place) => {
    const share = margin + ((1 - 2 * margin) * (place + 0.5)) / places;
    const foot = {
      column: from.column + share * (to.column - from.column),
      row: from.row + share * (to.row - from.row),
    };
    const colours = Array.from({ length: 2 * steps + 1 }, (_, step) =>
      labAt(
        picture,
        foot.column + outward.across * (step - steps) * stride,
        foot.row + outward.down * (step - steps) * stride,
      ),
    );
    return { foot, colours };
  });
  const inside = profiles.flatMap(({ colours }) => colours.slice(0, Math.ceil(steps * 0.7)));
  const board = {
    l: medianOf(inside.map(({ l }) => l)),
    a: medianOf(inside.map(({ a }) => a)),
    b: medianOf(inside.map(({ b }) => b)),
  };
  const found: ImagePoint[] = [];
  const gains: number[] = [];
  for (const { foot, colours } of profiles) {
    const values = colours.map(({ l, a, b }) =>
      Math.min(plainlyOther, Math.hypot(l - board.l, a - board.a, b - board.b)),
    );
    const step = stepOf(values);
    gains.push(step.rise);
    if (step.rise < leastRise) continue;
    const away = (step.at - steps) * stride;
    found.push({ column: foot.column + outward.across * away, row: foot.row + outward.down * away });
  }
  if (found.length < places / 4) return null;
  const line = lineAlong(found, 1);
  if (line === null) return null;
  const near = Math.max(1.2, long * 0.004);
  const on = found.filter(
    ({ column, row }) => Math.abs(line.across * column + line.down * row - line.offset) < near,
  ).length;
  return { line, seen: on / places, colour: board };
}

/** A change of colour of fewer units of CIELAB than this is no edge of a board. */
const leastRise = 5;

/** Where values step up, by the best fit with one level before and one after: between which samples, and by how much. */
function stepOf(values: readonly number[]): { readonly at: number; readonly rise: number } {
  const total = values.reduce((sum, value) => sum + value, 0);
  let before = 0;
  let best = { at: 0, rise: 0, gain: 0 };
  for (let index = 1; index < values.length; index++) {
    before += values[index - 1] ?? 0;
    const rise = (total - before) / (values.length - index) - before / index;
    const gain = rise <= 0 ? 0 : rise * rise * index * (values.length - index);
    if (gain > best.gain) best = { at: index - 0.5, rise, gain };
  }
  return best;
}

function labAt({ width, height, rgb }: Picture, column: number, row: number) {
  const x = Math.min(width - 1, Math.max(0, Math.round(column)));
  const y = Math.min(height - 1, Math.max(0, Math.round(row)));
  const at = 3 * (y * width + x);
  const light = (channel: number) => linearOf[rgb[at + channel] ?? 0] ?? 0;
  return labFromLinear(light(0), light(1), light(2));
}

function medianOf(values: readonly number[]): number {
  const sorted = Float32Array.from(values).sort();
  return sorted[sorted.length >> 1] ?? 0;
}
