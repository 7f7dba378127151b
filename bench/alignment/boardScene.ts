// Boards on a bench made in code, with everything about them known: which parts they carry, where the camera stands,
// how it is lit, how noisy and blurred the picture is. Places in millimetres from the board's top left corner.
import { applyHomography } from '#imaging/geometry/applyHomography.ts';
import type { Homography } from '#imaging/geometry/homography.ts';
import { type Four, homographyOfFour } from '#imaging/geometry/homographyOfFour.ts';
import { invertHomography } from '#imaging/geometry/invertHomography.ts';
import type { ImagePoint } from '#imaging/geometry/points.ts';
import { seededRandom } from '#imaging/geometry/seededRandom.ts';
import type { ImageBox } from '#imaging/likeness/regionsOf.ts';
import type { Picture } from '#imaging/pixels/picture.ts';

/** A part: a box with a colour, marks of another colour, and how far it stands up. */
export interface ScenePart {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly up: number;
  readonly colour: readonly [number, number, number];
  readonly marks: readonly [number, number, number];
  readonly look: 'bands' | 'pins' | 'round' | 'plain';
}

/** A board without its parts: what is printed on it, and what lies about. */
export interface SceneBoard {
  readonly seed: number;
  readonly width: number;
  readonly height: number;
  readonly colour: readonly [number, number, number];
  readonly bench: readonly [number, number, number];
}

/** How one frame is taken. */
export interface SceneFrame {
  readonly width: number;
  readonly height: number;
  /** The board's corners in the picture, clockwise from top left. */
  readonly corners: Four;
  /** Where things that stand up lean to, in millimetres a millimetre of height. */
  readonly lean: readonly [number, number];
  /** Factors on red, green and blue in linear light, exposure among them. */
  readonly gains: readonly [number, number, number];
  /** Share by which the light falls off from one side to the other, and its direction in radians. */
  readonly fall: number;
  readonly from: number;
  /** Standard deviation, in codes of 255. */
  readonly noise: number;
  /** Shifts of the exposures that are laid over one another: blur. */
  readonly shake: readonly ImagePoint[];
  readonly seed: number;
}

const kinds = [
  { width: 9, height: 2.6, up: 2.4, colour: [196, 168, 120], marks: [120, 50, 30], look: 'bands' },
  { width: 9.5, height: 6.6, up: 3.5, colour: [38, 38, 42], marks: [190, 190, 190], look: 'pins' },
  { width: 6.5, height: 6.5, up: 9, colour: [40, 50, 110], marks: [205, 205, 210], look: 'round' },
  { width: 5.5, height: 3.2, up: 5, colour: [205, 150, 40], marks: [90, 60, 10], look: 'round' },
  { width: 20, height: 2.6, up: 8, colour: [28, 28, 30], marks: [200, 180, 90], look: 'pins' },
  { width: 7, height: 6, up: 4, colour: [215, 215, 210], marks: [60, 60, 60], look: 'pins' },
  { width: 4.2, height: 3.4, up: 2, colour: [170, 40, 40], marks: [240, 200, 200], look: 'plain' },
  { width: 17, height: 11, up: 6, colour: [30, 60, 130], marks: [210, 210, 200], look: 'pins' },
] as const;

const boards = [
  [34, 110, 70],
  [24, 60, 120],
  [120, 30, 34],
  [40, 40, 44],
  [205, 205, 196],
] as const;
const benches = [
  [196, 190, 180],
  [120, 92, 66],
  [70, 78, 84],
  [150, 160, 150],
] as const;

/** A board for a seed, and places of parts on it that do not touch. */
export function sceneOf(seed: number): { board: SceneBoard; parts: readonly ScenePart[] } {
  const random = seededRandom(7919 * (seed + 1));
  const board: SceneBoard = {
    seed,
    width: 50 + Math.floor(5 * random()) * 10,
    height: 40 + Math.floor(3 * random()) * 10,
    colour: pick(boards, random),
    bench: pick(benches, random),
  };
  const parts: ScenePart[] = [];
  for (let time = 0; time < 200 && parts.length < 9; time++) {
    const kind = pick(kinds, random);
    const turned = random() < 0.4;
    const [width, height] = turned ? [kind.height, kind.width] : [kind.width, kind.height];
    const x = 2 + random() * (board.width - width - 4);
    const y = 2 + random() * (board.height - height - 4);
    const clear = parts.every(
      (other) =>
        x > other.x + other.width + 2 ||
        other.x > x + width + 2 ||
        y > other.y + other.height + 2 ||
        other.y > y + height + 2,
    );
    if (clear) parts.push({ ...kind, x, y, width, height });
  }
  return { board, parts };
}

/** A frame by a camera that moves, and light that changes, by about so much: 0 stands still, 1 is a hand. */
export function frameOf(board: SceneBoard, seed: number, moves: number, width = 640, height = 480): SceneFrame {
  const random = seededRandom(104729 * (board.seed + 1) + seed);
  const about = (spread: number) => spread * (2 * random() - 1);
  const scale = 0.62 * Math.min(width / board.width, (height / board.height) * 1.05) * (1 + about(0.1 * moves));
  const turn = about(0.14 * moves);
  const [tiltAcross, tiltDown] = [about(0.1 * moves), 0.06 + about(0.1 * moves)];
  const middle = { column: width / 2 + about(0.07 * moves * width), row: height / 2 + about(0.07 * moves * height) };
  const corner = (x: number, y: number): ImagePoint => {
    const [u, v] = [x / board.width, y / board.width];
    const depth = 1 + tiltAcross * u + tiltDown * v;
    const [across, down] = [(scale * x) / depth, (scale * y) / depth];
    return {
      column: middle.column + across * Math.cos(turn) - down * Math.sin(turn),
      row: middle.row + across * Math.sin(turn) + down * Math.cos(turn),
    };
  };
  const [w, h] = [board.width / 2, board.height / 2];
  const ev = 2 ** about(0.9 * moves);
  return {
    width,
    height,
    corners: [corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)],
    lean: [0.4 * tiltAcross + about(0.02 * moves), -0.12 - 0.4 * tiltDown + about(0.02 * moves)],
    gains: [ev * (1 + about(0.12 * moves)), ev, ev * (1 + about(0.15 * moves))],
    fall: 0.25 + about(0.2 * moves),
    from: 1 + about(1.5 * moves),
    noise: 2 + about(1),
    shake: [{ column: 0, row: 0 }],
    seed,
  };
}

/** The same frame shaken along a line of so many pixels. */
export function shaken(frame: SceneFrame, pixels: number): SceneFrame {
  const steps = Math.ceil(pixels);
  const shake = Array.from({ length: steps + 1 }, (_, i) => ({
    column: pixels * (i / steps - 0.5) * 0.8,
    row: pixels * (i / steps - 0.5) * 0.6,
  }));
  return { ...frame, shake };
}

/** From millimetres on the board's plane, downwards from its top left corner, to the picture. */
export function viewOf(board: SceneBoard, frame: SceneFrame): Homography {
  const { width, height } = board;
  const edges: Four = [
    { column: 0, row: 0 },
    { column: width, row: 0 },
    { column: width, row: height },
    { column: 0, row: height },
  ];
  const view = homographyOfFour(edges, frame.corners);
  if (!view) throw new Error('expected four corners, received a line');
  return view;
}

/** The box round a part in a frame, its foot and its top. */
export function boxOf(part: ScenePart, board: SceneBoard, frame: SceneFrame): ImageBox {
  const view = viewOf(board, frame);
  const [leanX, leanY] = [frame.lean[0] * part.up, frame.lean[1] * part.up];
  const points = [0, 1].flatMap((level) =>
    [part.x, part.x + part.width].flatMap((x) =>
      [part.y, part.y + part.height].map((y) =>
        applyHomography(view, { column: x + level * leanX, row: y + level * leanY }),
      ),
    ),
  );
  const columns = points.map((point) => point.column);
  const rows = points.map((point) => point.row);
  const [column, row] = [Math.min(...columns), Math.min(...rows)];
  return { column, row, width: Math.max(...columns) - column, height: Math.max(...rows) - row };
}

/** The picture of a board with these parts on it. */
export function renderScene(board: SceneBoard, parts: readonly ScenePart[], frame: SceneFrame): Picture {
  const { width, height } = frame;
  const back = invertHomography(viewOf(board, frame));
  if (!back) throw new Error('expected a view that can be turned round');
  const random = seededRandom(frame.seed + 31);
  const rgb = new Uint8Array(3 * width * height);
  const light = [0, 0, 0] as [number, number, number];
  const offsets = frame.shake.flatMap((shift) =>
    (frame.shake.length > 1 ? [0] : [-0.25, 0.25]).map((part) => [shift.column + part, shift.row + part / 2] as const),
  );
  const [p, q, r, s, t, u, v, w, z] = back;
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      light.fill(0);
      for (const [dx, dy] of offsets) {
        const [i, j] = [column + dx, row + dy];
        const depth = v * i + w * j + z;
        const colour = colourAt(board, parts, frame, (p * i + q * j + r) / depth, (s * i + t * j + u) / depth);
        for (const channel of [0, 1, 2] as const)
          light[channel] += ((colour[channel] ?? 0) / 255) ** 2.2 / offsets.length;
      }
      const along = ((column / width - 0.5) * Math.cos(frame.from) + (row / height - 0.5) * Math.sin(frame.from)) * 2;
      for (const channel of [0, 1, 2] as const) {
        const linear = light[channel] * frame.gains[channel] * (1 - frame.fall * along);
        const grain = frame.noise * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
        const code = 255 * Math.max(0, linear) ** (1 / 2.2) + grain;
        rgb[3 * (row * width + column) + channel] = Math.max(0, Math.min(255, Math.round(code)));
      }
    }
  }
  return { width, height, rgb };
}

function colourAt(
  board: SceneBoard,
  parts: readonly ScenePart[],
  { lean }: SceneFrame,
  x: number,
  y: number,
): readonly number[] {
  for (const part of parts) {
    const reach = 0.4 * part.up;
    if (x < part.x - reach || y < part.y - reach) continue;
    if (x > part.x + part.width + reach || y > part.y + part.height + reach) continue;
    // From the top downwards: what stands up hides what lies behind it.
    for (let level = 1; level >= 0; level -= 0.25) {
      const u = (x - part.x - lean[0] * part.up * level) / part.width;
      const v = (y - part.y - lean[1] * part.up * level) / part.height;
      if (u < 0 || v < 0 || u > 1 || v > 1) continue;
      if (part.look === 'round' && (2 * u - 1) ** 2 + (2 * v - 1) ** 2 > 1) continue;
      return level === 1 ? topOf(part, u, v) : part.colour.map((value) => value * 0.6);
    }
  }
  const shade = parts.some(
    (part) =>
      x > part.x && y > part.y && x < part.x + part.width + 0.25 * part.up && y < part.y + part.height + 0.3 * part.up,
  );
  const ground = groundAt(board, x, y);
  return shade ? ground.map((value) => value * 0.72) : ground;
}

function topOf(part: ScenePart, u: number, v: number): readonly number[] {
  const [along, across] = part.width >= part.height ? [u, v] : [v, u];
  if (part.look === 'bands')
    return Math.abs(((along * 5) % 1) - 0.5) < 0.2 && along > 0.15 && along < 0.85 ? part.marks : part.colour;
  if (part.look === 'pins') {
    if ((across < 0.12 || across > 0.88) && (along * Math.max(part.width, part.height)) % 2.54 < 1.1) return part.marks;
    return noise(91, u * 5, v * 3) > 0.82 ? part.marks : part.colour;
  }
  if (part.look === 'round') return (2 * u - 1) ** 2 + (2 * v - 1) ** 2 < 0.5 ? part.marks : part.colour;
  return part.colour;
}

function groundAt(board: SceneBoard, x: number, y: number): readonly number[] {
  const { seed, width, height } = board;
  if (x < 0 || y < 0 || x > width || y > height) {
    const lies = noise(seed + 5, x / 9, y / 9) > 0.9 ? 0.55 : 1;
    const grain = 0.9 + 0.14 * noise(seed + 3, x / 3, y / 14) + 0.05 * noise(seed + 4, x * 2, y * 2);
    return board.bench.map((value) => Math.min(255, value * grain * lies));
  }
  const [column, row] = [(x - 1.5) / 2.54, (y - 1.5) / 2.54];
  const away = Math.hypot(column - Math.round(column), row - Math.round(row)) * 2.54;
  const drilled = random2(seed + 11, Math.round(column), Math.round(row)) > 0.25;
  if (drilled && away < 0.45) return [30, 30, 28];
  if (drilled && away < 0.9) return [190, 180, 150];
  const track =
    random2(seed + 12, Math.floor(column), Math.round(row)) > 0.62 && Math.abs(row - Math.round(row)) < 0.16;
  const print = noise(seed + 13, x / 1.4, y / 2.2) > 0.88;
  const lift = track ? 1.25 : 1;
  return print ? [225, 225, 220] : board.colour.map((value) => Math.min(255, value * lift));
}

/** Smooth noise, 0 to 1. */
function noise(seed: number, x: number, y: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [dx, dy] = [x - left, y - top];
  const [u, v] = [dx * dx * (3 - 2 * dx), dy * dy * (3 - 2 * dy)];
  const upper = random2(seed, left, top) * (1 - u) + random2(seed, left + 1, top) * u;
  const lower = random2(seed, left, top + 1) * (1 - u) + random2(seed, left + 1, top + 1) * u;
  return upper * (1 - v) + lower * v;
}

function random2(seed: number, x: number, y: number): number {
  let t = Math.imul(seed, 374761393) ^ Math.imul(x, 668265263) ^ Math.imul(y, 2147483647 - 1274126177);
  t = Math.imul(t ^ (t >>> 13), 1274126177);
  return ((t ^ (t >>> 16)) >>> 0) / 4294967296;
}

function pick<T>(values: readonly T[], random: () => number): T {
  const value = values[Math.floor(random() * values.length)];
  if (value === undefined) throw new Error('expected something to pick from');
  return value;
}
