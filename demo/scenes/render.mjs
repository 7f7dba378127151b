// Renders the demo's photos: composes a scene for POV-Ray, traces it, develops it, writes the camera data.
// Usage: node demo/scenes/render.mjs [--only NAME] [--preview] [--keep FOLDER]

import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs, promisify } from 'node:util';
import { composeScene } from './composeScene.mjs';
import { developPhoto } from './developPhoto.mjs';
import { readStages } from './readStages.mjs';
import { writeCameraData } from './writeCameraData.mjs';

const run = promisify(execFile);
const here = dirname(fileURLToPath(import.meta.url));
const full = { width: 1740, height: 1305 };
// Traced smaller than shown: a small camera is no sharper, and it takes two thirds of the time.
const traced = { width: 1392, height: 1044 };
const preview = { width: 400, height: 300 };

const { values: asked } = parseArgs({
  options: { only: { type: 'string' }, preview: { type: 'boolean', default: false }, keep: { type: 'string' } },
});
const set = JSON.parse(await readFile(join(here, 'tide-lamp.json'), 'utf8'));
const build = join(here, '..', set.build);
const stages = await readStages(build);
const shots = set.shots.filter((shot) => asked.only === undefined || shot.name === asked.only);
if (shots.length === 0) throw new Error(`No shot is named ${asked.only}; see tide-lamp.json.`);

const work = asked.keep ?? (await mkdtemp(join(tmpdir(), 'scenes-')));
await mkdir(work, { recursive: true });
// One thread a picture keeps the tracer's random streams the same from run to run, so two pictures go side by side.
const queue = [...shots];
await Promise.all([1, 2].map(() => renderQueue()));
if (asked.keep === undefined) await rm(work, { recursive: true });

async function renderQueue() {
  for (let shot = queue.shift(); shot !== undefined; shot = queue.shift()) {
    const started = Date.now();
    const bytes = await renderShot(shot);
    console.log(
      `${shot.name}  ${((Date.now() - started) / 1000).toFixed(0)} s  ${(bytes / 1024).toFixed(0)} kB  ${shot.shows}`,
    );
  }
}

async function renderShot(shot) {
  const size = asked.preview ? preview : traced;
  const scene = join(work, `${shot.name}.pov`);
  await writeFile(scene, composeScene(shot, set.board, stages));
  const light = await trace(scene, size, false);
  const depth = await trace(scene, size, true);
  const jpeg = await developPhoto(light, depth, shot, asked.preview ? preview : full);
  const target = asked.preview ? join(work, `${shot.name}.jpg`) : join(build, 'photos', `${shot.name}.jpg`);
  await mkdir(dirname(target), { recursive: true });
  await writeFile(target, jpeg);
  await writeCameraData(target, shot);
  return jpeg.length;
}

async function trace(scene, size, depth) {
  const picture = scene.replace(/\.pov$/, depth ? '.depth.png' : '.light.png');
  const options = [
    `+I${scene}`,
    `+O${picture}`,
    `+W${size.width}`,
    `+H${size.height}`,
    `+L${join(here, 'include')}`,
    `Declare=Depth=${depth ? 1 : 0}`,
    'File_Gamma=1.0',
    '+FN16',
    '+WT1',
    '-D',
    ...(depth ? [] : ['+A0.3', '+AM2', '+R2', '-J']),
  ];
  try {
    await run('nice', ['-n', '19', 'povray', ...options], { maxBuffer: 1 << 26 });
  } catch (error) {
    throw new Error(`POV-Ray could not trace ${scene}:\n${String(error.stderr ?? error.message).slice(-1500)}`);
  }
  return picture;
}
