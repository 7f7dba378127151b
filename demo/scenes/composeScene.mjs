import { boardAt, boardThickness, holeAt } from './boardAt.mjs';
import { headroom } from './camera/picture.mjs';
import { randomStream } from './randomStream.mjs';
import { radians } from './sceneCamera.mjs';

/** Radius over the insulation and of the bare strand, in millimetres, by gauge. */
const gauges = { 22: { over: 0.85, bare: 0.38 }, 26: { over: 0.58, bare: 0.24 } };
const colours = {
  red: '<0.48, 0.016, 0.012>',
  black: '<0.018, 0.018, 0.019>',
  green: '<0.030, 0.250, 0.055>',
  orange: '<0.72, 0.165, 0.012>',
  yellow: '<0.70, 0.48, 0.022>',
  blue: '<0.020, 0.085, 0.40>',
  white: '<0.72, 0.72, 0.69>',
  grey: '<0.05, 0.05, 0.052>',
};

/**
 * Text for POV-Ray of one scene. Lengths are millimetres, angles degrees. `wider` is how much wider than the scene's
 * own view the picture is traced.
 */
export function composeScene(scene, board, stages, wider = 1) {
  const { camera, light } = scene;
  const context = { board, stages };
  const angle = (2 * Math.atan(Math.tan(radians(camera.angle) / 2) * wider) * 180) / Math.PI;
  return [
    '#version 3.7;',
    `#declare FocusAt = ${distance(camera.from, camera.focus)};`,
    `#declare Gain = ${headroom};`,
    `#declare LampPower = ${light.lamp} * Gain;`,
    `#declare FillPower = ${light.fill} * Gain;`,
    `#declare Bounce = ${light.bounce === false ? 0 : 1};`,
    '#declare Emit = Gain * (1 - Depth);',
    ...['bench', 'clutter', 'parts', 'small', 'module', 'ring', 'panel', 'printed', 'around'].map(
      (name) => `#include "${name}.inc"`,
    ),
    `camera { perspective location ${vector(camera.from)} right x * 4 / 3 up y sky <${camera.roll ?? 0}, 1, 0> look_at ${vector(camera.at)} angle ${angle.toFixed(6)} }`,
    `Evening(${vector(light.from)})`,
    scene.bench === undefined ? 'Desk()' : `Bench(${scene.bench.join(', ')})`,
    ...(scene.specks === undefined ? [] : [`Specks(${scene.specks.join(', ')})`]),
    ...(scene.lit ?? []),
    ...scene.things.map((thing) => composeThing(thing, context)),
    '',
  ].join('\n');
}

function composeThing(thing, context) {
  const inner = [
    ...(thing.make === undefined ? [] : [thing.make]),
    ...(thing.board === undefined ? [] : [composeBoard(thing, context)]),
    ...(thing.things ?? []).map((part) => composeThing(part, context)),
    ...(thing.wires ?? []).map((wire) => composeWire(wire, context)),
  ];
  const moves = [
    ...(thing.rotate === undefined ? [] : [`rotate ${vector(thing.rotate)}`]),
    ...(thing.turn === undefined ? [] : [`rotate y * ${thing.turn}`]),
    ...(thing.at === undefined ? [] : [`translate ${vector(thing.at)}`]),
  ];
  return `union { ${inner.join('\n')} ${moves.join(' ')} }`;
}

/** The board as it stands after the step that `thing.board` names. The same board has the same irregularities in every scene. */
function composeBoard(thing, { board, stages }) {
  const { parts, wires } = boardAt(thing, board, stages);
  const joints = parts.flatMap((part) => part.leads ?? []);
  return [
    `#declare Board_Mask = texture { ${board.mask ?? 'Mask_Green'} }`,
    `Perfboard(${board.width}, ${board.depth}, ${board.columns}, ${board.rows})`,
    ...parts.map((part) => {
      const [x, z] = holeAt(part.at, board);
      // Nobody sets a part dead straight.
      const lean = ((randomStream(`${part.ref} lean`)() - 0.5) * 3 * (part.loose ?? 1)).toFixed(2);
      return `union { ${part.make} rotate y * ${(part.turn ?? 0) + Number(lean)} translate <${x}, ${part.up ?? 0}, ${z}> }`;
    }),
    ...joints.map((hole, index) => {
      const [x, z] = holeAt(hole, board);
      const random = randomStream(`joint ${hole}`);
      return `union { Joint(<0, 0, 0>, ${(1.6 + random() * 0.7).toFixed(2)}, ${index + 1}) rotate x * 180 rotate y * ${Math.round(random() * 360)} translate <${x}, ${-boardThickness}, ${z}> }`;
    }),
    ...wires.flatMap((wire, index) => composeUnderWire(wire, index, board)),
  ].join('\n');
}

/** A wire between two pins on the underside; nothing where an end is off the board. */
function composeUnderWire(wire, index, board) {
  const from = board.pins[wire.from];
  const to = board.pins[wire.to];
  if (from === undefined || to === undefined || wire.colour === 'bare') return [];
  const [x1, z1] = holeAt(from, board);
  const [x2, z2] = holeAt(to, board);
  const random = randomStream(`wire ${wire.from} ${wire.to}`);
  const length = Math.hypot(x2 - x1, z2 - z1);
  const level = -boardThickness - 1.7 - (index % 4) * 0.75 - random() * 0.4;
  const bow = (random() - 0.5) * Math.min(9, length * 0.32);
  const along = (share, sideways, y) => [
    x1 + (x2 - x1) * share - ((z2 - z1) / length) * sideways,
    y,
    z1 + (z2 - z1) * share + ((x2 - x1) / length) * sideways,
  ];
  const inset = Math.min(0.2, 2.6 / length);
  const points = [
    along(0, 0, -boardThickness - 0.7),
    along(inset, bow * 0.25, level),
    along(0.35, bow * 0.9, level - 0.3),
    along(0.65, bow * 0.9, level - 0.3),
    along(1 - inset, bow * 0.25, level),
    along(1, 0, -boardThickness - 0.7),
  ];
  return [drawWire(points, wire.colour, wire.gauge, [1.6, 1.6])];
}

function composeWire(wire, { board }) {
  const points = wire.through.map((point) => (typeof point === 'string' ? pinUnder(point, board) : point));
  return drawWire(points, wire.colour, wire.gauge, wire.bare ?? [0, 0], wire.radius);
}

function pinUnder(name, board) {
  const hole = board.pins[name];
  if (hole === undefined) throw new Error(`The board has no pin ${name}.`);
  const [x, z] = holeAt(hole, board);
  return [x, -boardThickness - 0.7, z];
}

/** A bent wire through points; `bare` is the length without insulation at each end. */
function drawWire(points, colour, gauge, bare, radius) {
  const { over, bare: strand } = gauges[gauge] ?? { over: radius, bare: radius };
  const line = smooth(points);
  const lengths = [0];
  for (let i = 1; i < line.length; i++) lengths.push(lengths[i - 1] + distance(line[i - 1], line[i]));
  const total = lengths.at(-1);
  const first = lengths.findIndex((length) => length >= bare[0]);
  const last = lengths.findLastIndex((length) => length <= total - bare[1]);
  const skin = `texture { pigment { rgb ${colours[colour]} } finish { ambient 0 diffuse 0.8 specular 0.22 roughness 0.05 } }`;
  return [
    tube(line.slice(first, last + 1), radius ?? over, skin),
    ...(bare[0] > 0 ? [tube(line.slice(0, first + 1), strand, 'texture { Metal_Tin }')] : []),
    ...(bare[1] > 0 ? [tube(line.slice(last), strand, 'texture { Metal_Tin }')] : []),
  ].join('\n');
}

function tube(line, radius, texture) {
  if (line.length < 2) return '';
  const pieces = line.slice(1).map((point, i) => {
    const before = line[i];
    return `${distance(before, point) < 1e-3 ? '' : `cylinder { ${vector(before)}, ${vector(point)}, ${radius} }`} sphere { ${vector(point)}, ${radius} }`;
  });
  // Open ends: only the bends between are rounded.
  pieces[pieces.length - 1] = pieces.at(-1).replace(/sphere .*$/, '');
  return `union { ${pieces.join('\n')}\nsphere { ${vector(line[0])}, ${radius * 0.98} } ${texture} }`;
}

/** Points of a Catmull-Rom curve through the given ones, about a millimetre apart. */
function smooth(points) {
  const at = (i) => points[Math.min(points.length - 1, Math.max(0, i))];
  const line = [];
  for (let i = 0; i < points.length - 1; i++) {
    const steps = Math.max(2, Math.ceil(distance(at(i), at(i + 1)) / 1.1));
    for (let s = 0; s < steps; s++) {
      const t = s / steps;
      line.push(
        [0, 1, 2].map((k) => {
          const [a, b, c, d] = [at(i - 1)[k], at(i)[k], at(i + 1)[k], at(i + 2)[k]];
          return 0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - a - 3 * c + d) * t ** 3);
        }),
      );
    }
  }
  line.push(points.at(-1));
  return line;
}

function distance(a, b) {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function vector(v) {
  return `<${v.map((n) => Number(n.toFixed(3))).join(', ')}>`;
}
