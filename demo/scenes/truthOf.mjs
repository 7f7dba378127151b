import { boardAt, boardThickness, holeAt } from './boardAt.mjs';
import { circleAt } from './camera/defocus.mjs';
import { developing, focusOf } from './developFrame.mjs';
import { cornersOf, placeIn } from './placeIn.mjs';
import { frameCamera, length, minus, project } from './sceneCamera.mjs';

/** Blurred further than this many thousandths of the picture's long side, a subject counts as soft. */
const softFrom = 4;
/** Frames of one view this many seconds apart or less were taken at one go. */
const burstSeconds = 30;

/**
 * What is known of each frame of a set, from the geometry of its scene: places are shares of the upright picture's
 * width and height from its top left, boxes `[left, top, width, height]`, angles degrees, blur thousandths of the long
 * side. Frames are in the order in which they were taken.
 */
export function truthOf(set) {
  const shots = set.scenes
    .flatMap((scene) => scene.frames.map((frame) => ({ scene, frame, board: set.board, stages: set.stages })))
    .sort((a, b) => (a.frame.taken < b.frame.taken ? -1 : 1));
  const bursts = burstsOf(shots);
  return shots.map((shot, index) => {
    const { frame, scene } = shot;
    const burst = bursts.find((each) => each.includes(shot));
    const earlier = shots.slice(0, index).findLast(({ scene: other }) => other.sequence === scene.sequence);
    return {
      name: `${frame.name}.jpg`,
      shows: scene.shows,
      taken: frame.taken,
      camera: frame.camera ?? 'phone',
      subject: subjectOf(shot),
      board: boardOf(shot),
      focus: isSoft(shot) ? 'soft' : 'sharp',
      blur: rounded(blurOf(shot)),
      exposure: frame.ev ?? 0,
      cast: castOf(frame),
      tilt: frame.roll ?? 0,
      burst: burst === undefined ? null : { name: scene.name, best: bestOf(burst) === shot },
      ...(scene.sequence === undefined ? {} : { fresh: freshIn(shot, earlier) }),
      position: frame.position ?? null,
    };
  });
}

/** The subject's box as far as the picture shows it, and whether that is all of it. */
function subjectOf(shot) {
  const points = subjectPoints(shot).map((point) => project(frameCamera(shot.scene, shot.frame), point));
  return { box: boxOf(points), whole: points.every(isInside) };
}

function subjectPoints({ scene, board, stages }) {
  const { subject } = scene;
  if (subject.box !== undefined) return cornersOf(subject.box).map((point) => placeIn(subject, point));
  const thing = findBoard(scene.things);
  if (subject.part === undefined) return boardCorners(board, 0).map((point) => thing.place(point));
  const part = boardAt(thing, board, stages).parts.find(({ ref }) => ref === subject.part);
  return partPoints(part, board).map((point) => thing.place(point));
}

function partPoints(part, board) {
  const [x, z] = holeAt(part.at, board);
  const [width, height, depth] = part.size;
  const up = part.up ?? 0;
  return cornersOf([
    [x - width / 2, up, z - depth / 2],
    [x + width / 2, up + height, z + depth / 2],
  ]);
}

/** The board's side that is seen, and its four corners, clockwise from the top left; null where one is not in the picture. */
function boardOf({ scene, frame, board }) {
  const thing = findBoard(scene.things);
  if (thing === undefined) return null;
  const over = placedDirection(thing, [0, 1, 0])[1] < 0;
  const camera = frameCamera(scene, frame);
  const seen = boardCorners(board, over ? -boardThickness : 0).map((point) => project(camera, thing.place(point)));
  return {
    step: thing.board,
    side: over ? 'underside' : 'component side',
    corners: seen.every(isInside) ? clockwise(seen, camera).map(rounded) : null,
  };
}

function boardCorners(board, y) {
  const [x, z] = [board.width / 2, board.depth / 2];
  return [
    [-x, y, z],
    [x, y, z],
    [x, y, -z],
    [-x, y, -z],
  ];
}

/** Four places sorted clockwise round their middle, beginning with the one nearest to the picture's top left. */
function clockwise(points, { width, height }) {
  const middle = [0, 1].map((k) => points.reduce((sum, point) => sum + point[k] / 4, 0));
  const angle = ([x, y]) => Math.atan2((y - middle[1]) * height, (x - middle[0]) * width);
  const round = [...points].sort((a, b) => angle(a) - angle(b));
  const sums = round.map(([x, y]) => x * width + y * height);
  const first = sums.indexOf(Math.min(...sums));
  return [...round.slice(first), ...round.slice(0, first)];
}

/** The thing of a scene that is the board, with `place` from its own millimetres to those of the scene. */
function findBoard(things, outer = (point) => point) {
  for (const thing of things) {
    const place = (point) => outer(placeIn(thing, point));
    if (thing.board !== undefined) return { ...thing, place };
    const inner = findBoard(thing.things ?? [], place);
    if (inner !== undefined) return inner;
  }
  return undefined;
}

function placedDirection(thing, direction) {
  return minus(thing.place(direction), thing.place([0, 0, 0]));
}

/** Diameter of the blur in the subject's middle: out of focus, and shaken. */
function blurOf(shot) {
  const { scene, frame } = shot;
  const points = subjectPoints(shot);
  const middle = [0, 1, 2].map((k) => points.reduce((sum, point) => sum + point[k] / points.length, 0));
  const away = length(minus(middle, scene.camera.from)) / length(minus(scene.camera.focus, scene.camera.from));
  const focus = 2 * circleAt(away / focusOf(scene, frame), developing(scene, frame).blur);
  return [focus, frame.shake?.[0] ?? 0];
}

function isSoft(shot) {
  return blurOf(shot).some((blur) => blur > softFrom);
}

/** Balance of red against blue, where the camera missed it. */
function castOf({ gains = [1, 1, 1] }) {
  const ratio = gains[0] / gains[2];
  return { gains, tint: ratio > 1.1 ? 'warm' : ratio < 0.9 ? 'cool' : 'none' };
}

/** Parts and wires that the board has got since the frame before of the same camera, each with its box. */
function freshIn({ scene, frame, board, stages }, earlier) {
  const thing = findBoard(scene.things);
  const now = boardAt(thing, board, stages);
  const before =
    earlier === undefined ? { parts: [], wires: [] } : boardAt(findBoard(earlier.scene.things), board, stages);
  const camera = frameCamera(scene, frame);
  const seen = (points) => boxOf(points.map((point) => project(camera, thing.place(point))));
  const parts = now.parts.filter((part) => !before.parts.includes(part));
  const wires = now.wires.filter((wire) => !before.wires.includes(wire));
  return [
    ...parts.map((part) => ({ what: part.ref, box: seen(partPoints(part, board)) })),
    ...wires.flatMap((wire) => {
      const ends = [board.pins[wire.from], board.pins[wire.to]];
      if (ends.includes(undefined) || wire.colour === 'bare') return [];
      const points = ends.map((hole) => holeAt(hole, board)).map(([x, z]) => [x, -boardThickness, z]);
      return [{ what: `${wire.from} – ${wire.to}`, box: seen(points) }];
    }),
  ];
}

/** Runs of frames of one scene, held the same way, each taken soon after the one before. */
function burstsOf(shots) {
  const runs = [];
  for (const shot of shots) {
    const run = runs.find(([first, ...more]) => first.scene === shot.scene && isNext(more.at(-1) ?? first, shot));
    if (run === undefined) runs.push([shot]);
    else run.push(shot);
  }
  return runs.filter((run) => run.length > 1);
}

function isNext(before, shot) {
  const seconds = (Date.parse(shot.frame.taken) - Date.parse(before.frame.taken)) / 1000;
  return seconds <= burstSeconds && (before.frame.portrait ?? false) === (shot.frame.portrait ?? false);
}

/** The frame with the fewest faults: blur, a subject cut off, wrong exposure or colour, a horizon that leans. */
function bestOf(burst) {
  const faults = (shot) =>
    Math.max(...blurOf(shot)) +
    (subjectOf(shot).whole ? 0 : 10) +
    4 * Math.abs(shot.frame.ev ?? 0) +
    Math.abs(shot.frame.roll ?? 0) +
    20 * Math.max(...(shot.frame.gains ?? [1]).map((gain) => Math.abs(gain - 1)));
  return burst.reduce((best, shot) => (faults(shot) < faults(best) ? shot : best));
}

function boxOf(points) {
  const [left, top] = [0, 1].map((k) => within(Math.min(...points.map((point) => point[k]))));
  const [right, low] = [0, 1].map((k) => within(Math.max(...points.map((point) => point[k]))));
  return rounded([left, top, right - left, low - top]);
}

function within(share) {
  return Math.min(1, Math.max(0, share));
}

function isInside([x, y]) {
  return x >= 0 && x <= 1 && y >= 0 && y <= 1;
}

function rounded(numbers) {
  return numbers.map((v) => Number(v.toFixed(4)));
}
