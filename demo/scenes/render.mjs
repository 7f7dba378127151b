// Renders photos: traces each scene once, makes frames of it as a camera would, writes the camera data.
// Usage: node demo/scenes/render.mjs [--set FILE] [--only NAME] [--preview] [--out FOLDER] [--cache FOLDER]

import { mkdir, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { readDistance, readLight } from './camera/picture.mjs';
import { developFrame } from './developFrame.mjs';
import { readSet } from './readSet.mjs';
import { tracedSide } from './sceneCamera.mjs';
import { traceScene } from './traceScene.mjs';
import { writeCameraData } from './writeCameraData.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const { values: asked } = parseArgs({
  options: {
    set: { type: 'string', default: join(here, 'tide-lamp.json') },
    only: { type: 'string' },
    preview: { type: 'boolean', default: false },
    out: { type: 'string' },
    cache: {
      type: 'string',
      default: join(process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache'), 'tide-lamp-scenes'),
    },
  },
});
const set = await readSet(asked.set);
const out = asked.out ?? (set.build === undefined ? undefined : join(set.build, 'photos'));
if (out === undefined || (asked.preview && asked.out === undefined)) throw new Error('Say where with --out FOLDER.');
const isAsked = (scene, frame) => [undefined, scene.name, frame.name].includes(asked.only);
const queue = set.scenes.filter((scene) => scene.frames.some((frame) => isAsked(scene, frame)));
if (queue.length === 0) throw new Error(`No scene and no frame is named ${asked.only}; see ${asked.set}.`);
await mkdir(out, { recursive: true });
await Promise.all([1, 2].map(() => renderQueue()));

async function renderQueue() {
  for (let scene = queue.shift(); scene !== undefined; scene = queue.shift()) await renderScene(scene);
}

async function renderScene(scene) {
  const sides = sidesOf(scene);
  const traced = await traceScene(scene, set, set.stages, { side: sides.side, cache: asked.cache });
  console.log(`${scene.name}: ${traced.seconds === 0 ? 'kept' : `traced in ${traced.seconds.toFixed(0)} s`}`);
  const light = await readLight(traced.light);
  const distance = await readDistance(traced.distance);
  for (const frame of scene.frames.filter((each) => isAsked(scene, each))) {
    const started = Date.now();
    const jpeg = await developFrame(light, distance, scene, frame, sides);
    const target = join(out, `${frame.name}.jpg`);
    await writeFile(target, jpeg);
    await writeCameraData(target, frame, set.cameras);
    console.log(
      `  ${frame.name}  ${((Date.now() - started) / 1000).toFixed(0)} s  ${(jpeg.length / 1024).toFixed(0)} kB`,
    );
  }
}

/** Long side in pixels: as traced, and as the JPEG has it. */
function sidesOf(scene) {
  if (asked.preview) return { side: 400, shown: 400 };
  const side = scene.side ?? tracedSide;
  return { side, shown: side * 1.25 };
}
