import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { access, mkdir, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { composeScene } from './composeScene.mjs';
import { tracedSize } from './sceneCamera.mjs';

const run = promisify(execFile);
const include = join(dirname(fileURLToPath(import.meta.url)), 'include');

/**
 * Traces a scene once for its light and once for its distances, as wide as its frames need, and keeps both
 * in the folder `cache` under a name made from all that decides them. Answers the two files, and the seconds it took
 * (0 where they were kept).
 */
export async function traceScene(scene, set, stages, { side, cache }) {
  const size = tracedSize(scene, side);
  const text = composeScene(scene, set.board, stages, size.width / side);
  const key = await keyOf(text, size);
  const stem = join(cache, `${scene.name}-${size.width}-${key}`);
  const files = { light: `${stem}.light.png`, distance: `${stem}.distance.png` };
  if ((await isThere(files.light)) && (await isThere(files.distance))) return { ...files, seconds: 0 };
  await mkdir(cache, { recursive: true });
  await writeFile(`${stem}.pov`, text);
  const started = Date.now();
  await trace(`${stem}.pov`, files.distance, size, true);
  await trace(`${stem}.pov`, files.light, size, false);
  return { ...files, seconds: (Date.now() - started) / 1000 };
}

/** All that decides a trace: the scene's text, the macros that it may call, and the size. */
async function keyOf(text, size) {
  const hash = createHash('sha256').update(JSON.stringify(size)).update(text);
  for (const name of (await readdir(include)).sort()) hash.update(name).update(await readFile(join(include, name)));
  return hash.digest('hex').slice(0, 16);
}

async function isThere(file) {
  return access(file).then(
    () => true,
    () => false,
  );
}

async function trace(scene, picture, size, depth) {
  // Named when whole, so that a run that was cut short leaves nothing that passes for a trace.
  const partial = picture.replace(/\.png$/, '.part.png');
  const options = [
    `+I${scene}`,
    `+O${partial}`,
    `+W${size.width}`,
    `+H${size.height}`,
    `+L${include}`,
    `Declare=Depth=${depth ? 1 : 0}`,
    'File_Gamma=1.0',
    '+FN16',
    // One thread keeps the tracer's random streams the same from run to run.
    '+WT1',
    '-D',
    ...(depth ? [] : ['+A0.17', '+AM2', '+R2', '-J']),
  ];
  try {
    await run('nice', ['-n', '19', 'povray', ...options], { maxBuffer: 1 << 26 });
  } catch (error) {
    throw new Error(`POV-Ray could not trace ${scene}:\n${String(error.stderr ?? error.message).slice(-1500)}`);
  }
  await rename(partial, picture);
}
