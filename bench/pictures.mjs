// How right the measures of pictures are, on scenes drawn from numbers and on the demo's rendered photos.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { bundleForNode } from '../scripts/lib/bundleForNode.mjs';
import { root } from '../scripts/lib/fresh.mjs';
import { blurred, drawScene, photograph, sceneKinds } from './madeScenes.mjs';

/** Constants were chosen on the first scenes; figures that count are those of the second. */
const halves = [
  { title: 'chosen on', seeds: [1, 3] },
  { title: 'reported on', seeds: [2, 4] },
];
/** Standard deviation of the blur in pixels. Up to 0.7 is to be called sharp, from 1.7 on soft; between, any verdict is right. */
const blurs = [0, 0.7, 1.2, 1.7, 2.4, 3.4];
const [sharpUpTo, softFrom] = [0.7, 1.7];
const noises = [0, 3, 6, 12];
const exposures = [-2, -1, -0.5, 0, 0.5, 1, 2];
const casts = [
  [1, 1, 1],
  [1.16, 1, 0.78],
  [1.35, 1, 0.6],
  [0.85, 1, 1.2],
  [0.75, 1, 1.4],
  [1, 1.1, 1],
];
const fallOffs = [0, 1, 2, 3];
const longSide = 1024;

/** Prints the errors of each measure. `SCENES` may name a folder with more rendered photos, as demo/scenes writes them. */
export async function bench() {
  const into = path.join(root, 'dist/bench');
  await bundleForNode(
    {
      measurePicture: 'src/imaging/measures/measurePicture.ts',
      deltaE2000: 'src/imaging/colour/deltaE2000.ts',
      labFromLinear: 'src/imaging/colour/labFromLinear.ts',
    },
    into,
  );
  const [{ measurePicture }, { deltaE2000 }, { labFromLinear }] = await Promise.all(
    ['measurePicture', 'deltaE2000', 'labFromLinear'].map((name) => import(path.join(into, `${name}.js`))),
  );
  /** What is left of a cast on a light grey after it was corrected as measured. */
  const left = (cast, gains) => {
    if (cast === null) return Number.NaN;
    const [red, green, blue] = gains.map((gain, at) => gain * cast.gains[at]);
    const share = 0.5 / (0.2126 * red + 0.7152 * green + 0.0722 * blue);
    return deltaE2000(labFromLinear(red * share, green * share, blue * share), labFromLinear(0.5, 0.5, 0.5));
  };
  for (const { title, seeds } of halves) {
    const errors = newErrors();
    for (const kind of sceneKinds) {
      for (const seed of seeds) measureScene(drawScene(kind, seed), measurePicture, left, errors);
    }
    print(`Made scenes ${title}: ${sceneKinds.length * seeds.length}`, errors);
  }
  await rendered(measurePicture, left);
}

function newErrors() {
  return {
    verdicts: { sharp: { sharp: 0, unsure: 0, soft: 0 }, soft: { sharp: 0, unsure: 0, soft: 0 } },
    order: [],
    motion: { told: 0, of: 0, false: 0, ofFalse: 0, lengths: [], directions: [] },
    noise: [],
    ev: [],
    cast: [],
    evenness: [],
    lightDirection: [],
    milliseconds: [],
  };
}

function measureScene(scene, measurePicture, left, errors) {
  const measure = (light, camera) => {
    const picture = photograph(light, { seed: scene.seed, ...camera });
    const before = process.cpuUsage();
    const measures = measurePicture(picture, { subject: scene.box });
    const { user, system } = process.cpuUsage(before);
    errors.milliseconds.push((user + system) / 1000);
    return measures;
  };
  const series = blurs.map((bell) => blurred(scene, { bell }));
  for (const noise of [0, 6]) {
    const focus = series.map((light) => measure(light, { noise }).focus);
    errors.order.push(
      spearman(
        blurs,
        focus.map(({ score }) => -(score ?? 0)),
      ),
    );
    for (const [at, { verdict, motion }] of focus.entries()) {
      if (blurs[at] <= sharpUpTo) errors.verdicts.sharp[verdict]++;
      if (blurs[at] >= softFrom) errors.verdicts.soft[verdict]++;
      errors.motion.ofFalse++;
      if (motion !== null) errors.motion.false++;
    }
  }
  for (const [at, length] of [6, 12, 20].entries()) {
    const direction = (scene.seed * 47 + at * 65) % 180;
    const { motion, verdict } = measure(blurred(scene, { motion: { length, direction } }), { noise: 3 }).focus;
    errors.verdicts.soft[verdict]++;
    errors.motion.of++;
    if (motion === null) continue;
    errors.motion.told++;
    errors.motion.lengths.push(Math.abs(motion.length / length - 1));
    const off = Math.abs(motion.direction - direction);
    errors.motion.directions.push(Math.min(off, 180 - off));
  }
  // Noise of one σ in each channel is less in their weighted sum.
  const inLuma = Math.hypot(0.2126, 0.7152, 0.0722);
  for (const noise of noises) errors.noise.push(Math.abs(measure(scene, { noise }).noise - noise * inLuma));
  for (const ev of exposures) errors.ev.push(Math.abs(measure(scene, { ev, noise: 2 }).exposure.ev - ev));
  for (const gains of casts) errors.cast.push(left(measure(scene, { gains, noise: 2 }).cast, gains));
  for (const stops of fallOffs) {
    const direction = (scene.seed * 77) % 360;
    const { evenness, brightest } = measure(scene, { fallOff: { stops, direction }, ev: -0.5, noise: 2 }).exposure;
    errors.evenness.push(Math.abs(-Math.log2(evenness ?? Number.NaN) - stops));
    if (stops < 1 || brightest === null) continue;
    const off = Math.abs(brightest - ((direction + 180) % 360));
    errors.lightDirection.push(Math.min(off, 360 - off));
  }
}

/** The same for the demo's photos, with blur, exposure and cast as the scenes say, and with more of each put on. */
async function rendered(measurePicture, left) {
  const truth = JSON.parse(readFileSync(path.join(root, 'demo/scenes/truth.json'), 'utf8'));
  const folders = [process.env.SCENES, path.join(root, 'demo/tide-lamp/photos')].filter(
    (folder) => folder !== undefined,
  );
  const errors = newErrors();
  const wrong = [];
  const bursts = new Map();
  let photos = 0;
  for (const frame of truth) {
    const folder = folders.find((each) => existsSync(path.join(each, frame.name)));
    if (folder === undefined) continue;
    photos++;
    const [x, y, width, height] = frame.subject.box;
    const subject = { x, y, width, height };
    const file = path.join(folder, frame.name);
    const measures = measurePicture(await read(file), { subject });
    errors.verdicts[frame.focus][measures.focus.verdict]++;
    if (frame.focus !== measures.focus.verdict)
      wrong.push(`${frame.name} ${frame.focus}, found ${measures.focus.verdict}`);
    errors.ev.push(Math.abs(measures.exposure.ev - frame.exposure));
    errors.cast.push(left(measures.cast, frame.cast.gains));
    if (frame.burst) {
      const blur = Math.max(...frame.blur);
      bursts.set(frame.burst.name, [...(bursts.get(frame.burst.name) ?? []), { blur, score: measures.focus.score }]);
    }
    if (frame.focus !== 'sharp') continue;
    const scores = [measures.focus.score];
    for (const bell of blurs.slice(1)) {
      const { score, verdict } = measurePicture(await read(file, bell), { subject }).focus;
      scores.push(score);
      if (bell >= softFrom) errors.verdicts.soft[verdict]++;
    }
    errors.order.push(
      spearman(
        [0, ...blurs.slice(1)],
        scores.map((score) => -(score ?? 0)),
      ),
    );
  }
  print(`Rendered photos: ${photos}`, errors);
  if (wrong.length > 0) process.stdout.write(`  not as the scene says     ${wrong.join('; ')}\n`);
  for (const [name, shots] of bursts) {
    if (shots.length < 2) continue;
    const list = shots.map(({ blur, score }) => `${blur.toFixed(1)} → ${(score ?? 0).toFixed(2)}`).join(', ');
    process.stdout.write(`  burst ${name.padEnd(20)} blur ‰ → score: ${list}\n`);
  }
}

async function read(file, bell = 0) {
  const small = sharp(file).rotate().resize(longSide, longSide, { fit: 'inside' });
  const pixels = await small.removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const { width, height } = pixels.info;
  const blurry =
    bell > 0
      ? sharp(pixels.data, { raw: pixels.info }).blur({ sigma: bell, minAmplitude: 0.01, precision: 'float' }).raw()
      : null;
  const rgb = new Uint8Array(blurry ? await blurry.toBuffer() : pixels.data);
  return { width, height, rgb };
}

function print(title, errors) {
  const { verdicts, motion } = errors;
  const lines = [title];
  const line = (name, text) => lines.push(`  ${name.padEnd(25)} ${text}`);
  for (const [is, found] of Object.entries(verdicts)) {
    line(
      `${is} frames called`,
      Object.entries(found)
        .map(([verdict, count]) => `${verdict} ${count}`)
        .join(', '),
    );
  }
  if (errors.order.length > 0) {
    line('order in a series', `Spearman median ${at(errors.order, 0.5, 3)}, lowest ${at(errors.order, 0, 3)}`);
  }
  if (motion.of > 0) {
    line('movement told', `${motion.told} of ${motion.of}; of defocused frames ${motion.false} of ${motion.ofFalse}`);
    line(
      'movement, length off',
      `median ${at(motion.lengths, 0.5, 2)}, 90 % ${at(motion.lengths, 0.9, 2)} of the length`,
    );
    line('movement, direction off', `median ${at(motion.directions, 0.5, 0)}°, 90 % ${at(motion.directions, 0.9, 0)}°`);
  }
  for (const [name, list, unit, digits] of [
    ['noise off', errors.noise, 'codes', 2],
    ['exposure off', errors.ev, 'EV', 2],
    ['cast left', errors.cast, 'ΔE00', 1],
    ['fall-off of light off', errors.evenness, 'stops', 2],
    ['direction of light off', errors.lightDirection, '°', 0],
    ['processor time', errors.milliseconds, 'ms', 0],
  ]) {
    if (list.length > 0) line(name, `median ${at(list, 0.5, digits)}, 90 % ${at(list, 0.9, digits)} ${unit}`);
  }
  process.stdout.write(`${lines.join('\n')}\n`);
}

/** The value that `share` of the values lie below; those that could not be measured count as highest. */
function at(values, share, digits) {
  const sorted = values
    .map((value) => (Number.isNaN(value) ? Number.POSITIVE_INFINITY : value))
    .toSorted((a, b) => a - b);
  return sorted[Math.round(share * (sorted.length - 1))]?.toFixed(digits) ?? '–';
}

/** Rank correlation of two lists; equal values share their mean rank. */
function spearman(one, other) {
  const [a, b] = [ranksOf(one), ranksOf(other)];
  const middle = (a.length - 1) / 2;
  const product = (x, y) => x.reduce((sum, value, n) => sum + (value - middle) * (y[n] - middle), 0);
  return product(a, b) / Math.sqrt(product(a, a) * product(b, b) || 1);
}

function ranksOf(values) {
  return values.map(
    (value) =>
      values.filter((other) => other < value).length + (values.filter((other) => other === value).length - 1) / 2,
  );
}
