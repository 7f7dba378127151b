/** An upright box in a picture, in pixels, from the outer edge of its first pixel. */
export interface ImageBox {
  readonly column: number;
  readonly row: number;
  readonly width: number;
  readonly height: number;
}

/** A connected part of a picture: the box round it, and its own area in pixels. */
export interface Region {
  readonly box: ImageBox;
  readonly area: number;
}

/** Regions nearer than this, in pixels, are one. */
const gap = 5;
/** The least share of the picture that a region covers. */
const leastShare = 0.0006;
const most = 12;

/**
 * Regions of a plane above 1, the largest first, twelve at most: pixels above 1, joined to those above 0.6 that touch them (J. Canny, 1986); regions a few pixels apart count as one, specks and parts that are not
 * meant are left out.
 */
export function regionsOf(
  values: Float32Array,
  width: number,
  height: number,
  isMeant: (pixels: readonly number[]) => boolean,
): readonly Region[] {
  const opened = opening(
    Uint8Array.from(values, (value) => (value > 0.6 ? 1 : 0)),
    width,
    height,
  );
  const parts = connected(opened, width).filter((part) => part.some((at) => (values[at] ?? 0) > 1) && isMeant(part));
  const joined = joinNear(parts.map((part) => regionOf(part, width)));
  return joined
    .filter(({ area }) => area >= leastShare * width * height)
    .sort((a, b) => b.area - a.area)
    .slice(0, most);
}

function regionOf(part: readonly number[], width: number): Region {
  let [left, right, top, bottom] = [width, 0, Number.POSITIVE_INFINITY, 0];
  for (const at of part) {
    const [column, row] = [at % width, Math.floor(at / width)];
    left = Math.min(left, column);
    right = Math.max(right, column);
    top = Math.min(top, row);
    bottom = Math.max(bottom, row);
  }
  return { box: { column: left, row: top, width: right - left + 1, height: bottom - top + 1 }, area: part.length };
}

/** Erosion, then dilation, by the square of 3 × 3 pixels. */
function opening(mask: Uint8Array, width: number, height: number): Uint8Array {
  return spread(spread(mask, width, height, 0), width, height, 1);
}

/** Gives `value` to each pixel with a neighbour that has it. */
function spread(mask: Uint8Array, width: number, height: number, value: 0 | 1): Uint8Array {
  const wider = mask.slice();
  for (let row = 1; row < height - 1; row++) {
    for (let at = row * width + 1; at < (row + 1) * width - 1; at++) {
      if (mask[at] !== value) continue;
      for (let i = at - width - 1; i <= at + width - 1; i += width) wider.fill(value, i, i + 3);
    }
  }
  return wider;
}

function connected(mask: Uint8Array, width: number): readonly (readonly number[])[] {
  const seen = new Uint8Array(mask.length);
  const parts: number[][] = [];
  for (let start = 0; start < mask.length; start++) {
    if (mask[start] !== 1 || seen[start] === 1) continue;
    const part = [start];
    seen[start] = 1;
    for (let i = 0; i < part.length; i++) {
      const at = part[i] ?? 0;
      for (const step of [-1, 1, -width, width, -width - 1, -width + 1, width - 1, width + 1]) {
        const next = at + step;
        if (mask[next] !== 1 || seen[next] === 1) continue;
        seen[next] = 1;
        part.push(next);
      }
    }
    parts.push(part);
  }
  return parts;
}

function joinNear(regions: readonly Region[]): readonly Region[] {
  const left = [...regions];
  const joined: Region[] = [];
  for (let region = left.pop(); region; region = left.pop()) {
    const near = left.findIndex((other) => region !== undefined && isNear(region.box, other.box));
    if (near < 0) joined.push(region);
    else left.push(...left.splice(near, 1).map((other) => join(region ?? other, other)));
  }
  return joined;
}

function isNear(a: ImageBox, b: ImageBox): boolean {
  const across = Math.max(a.column, b.column) - Math.min(a.column + a.width, b.column + b.width);
  const down = Math.max(a.row, b.row) - Math.min(a.row + a.height, b.row + b.height);
  return across < gap && down < gap;
}

function join(a: Region, b: Region): Region {
  const column = Math.min(a.box.column, b.box.column);
  const row = Math.min(a.box.row, b.box.row);
  return {
    box: {
      column,
      row,
      width: Math.max(a.box.column + a.box.width, b.box.column + b.box.width) - column,
      height: Math.max(a.box.row + a.box.height, b.box.row + b.box.height) - row,
    },
    area: a.area + b.area,
  };
}
