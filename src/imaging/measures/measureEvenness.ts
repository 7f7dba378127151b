import { linearFromCoded, type Plane } from '../pixels/picture.ts';
import type { Pyramid } from './pyramidOf.ts';
import { quantileOf } from './quantileOf.ts';

export interface Evenness {
  /** Light at the darkest place over light at the brightest, 0 to 1: 0.5 is one stop; null where too little is plain. */
  readonly evenness: number | null;
  /** Where the light comes from, in degrees clockwise from the row's direction, 0 to 360; null where it is even. */
  readonly brightest: number | null;
}

/** Strips that each direction is cut into, so that light may fall off on both sides. */
const strips = 8;
/** Two places that are compared lie this far apart, in pixels of an eighth of the size. */
const apart = 2;
/** A step by more than this, in stops, is another thing, not another light. */
const sameThing = 0.15;
/** Steps this far from the middle one of a strip still count. */
const nearMiddle = 0.05;
/** Share of the pairs of a strip that differ little, at least. */
const fewestPairs = 0.2;
/** Too dark to tell stops, or cut off by white, in linear light. */
const [darkest, brightest] = [0.004, 0.9];
/** Less than this, in stops across the picture, is no direction. */
const plainStops = 0.3;

/**
 * How the light falls off. Light changes slowly and things change at once (E. H. Land and J. J. McCann, Journal of the
 * Optical Society of America 61(1), 1971; B. K. P. Horn, Computer Graphics and Image Processing 3(4), 1974): of all pairs of near places,
 * those that differ little tell the slope of the light in their strip, and the slopes add up to its course over the
 * picture. Truth: gradients of known stops.
 */
export function measureEvenness(pyramid: Pyramid): Evenness {
  const stops = stopsOf(pyramid[3]);
  const across = courseOf(stops, 1, stops.width);
  const down = courseOf(stops, stops.width, stops.height);
  if (across === null || down === null) return { evenness: null, brightest: null };
  const range = Math.max(...across) - Math.min(...across) + Math.max(...down) - Math.min(...down);
  const [x, y] = [slopeOf(across), slopeOf(down)];
  return {
    evenness: 2 ** -range,
    brightest: Math.hypot(x, y) < plainStops ? null : ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360,
  };
}

interface Stops {
  readonly width: number;
  readonly height: number;
  /** Stops under full light; NaN where there is too little or too much to tell. */
  readonly values: Float32Array;
}

function stopsOf({ width, height, values }: Plane): Stops {
  const stops = Float32Array.from(values, (value) => {
    const linear = linearFromCoded(value);
    return linear < darkest || linear > brightest ? Number.NaN : Math.log2(linear);
  });
  return { width, height, values: stops };
}

/** Course of the light over the strips in one direction, in stops from its start; null where too little is plain. */
function courseOf({ width, height, values }: Stops, stride: number, size: number): number[] | null {
  const steps: number[][] = Array.from({ length: strips }, () => []);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const place = stride === 1 ? column : row;
      if (place + apart >= size) continue;
      const at = row * width + column;
      const step = (values[at + apart * stride] ?? 0) - (values[at] ?? 0);
      // Also false where either place does not tell.
      if (Math.abs(step) < sameThing) steps[Math.floor(((place + apart / 2) * strips) / size)]?.push(step);
    }
  }
  const slopes = steps.map((strip) => (strip.length < (fewestPairs * values.length) / strips ? null : middleOf(strip)));
  const told = slopes.filter((slope) => slope !== null);
  if (told.length < strips / 2) return null;
  const usual = quantileOf(told, 0.5);
  const course = [0];
  for (const slope of slopes) course.push((course.at(-1) ?? 0) + ((slope ?? usual) * size) / strips / apart);
  return course;
}

function middleOf(steps: readonly number[]): number {
  const middle = quantileOf(steps, 0.5);
  const near = steps.filter((step) => Math.abs(step - middle) <= nearMiddle);
  return near.reduce((sum, step) => sum + step, 0) / near.length;
}

/** Stops from the first to the last strip of the straight line through the course. */
function slopeOf(course: readonly number[]): number {
  const middle = (course.length - 1) / 2;
  const [above, below] = course.reduce(
    ([sum, squares], value, at) => [sum + (at - middle) * value, squares + (at - middle) ** 2],
    [0, 0],
  );
  return (above / below) * (course.length - 1);
}
