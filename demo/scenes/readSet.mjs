import { readFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { readStages } from './readStages.mjs';

/**
 * A set of scenes from its file: the board with its parts, the stages of the build (from the set itself, or from the
 * guide and the wiring table of the build that it names), the cameras, and the scenes, each with what its view says.
 */
export async function readSet(file) {
  const set = JSON.parse(await readFile(file, 'utf8'));
  const build = set.build === undefined ? undefined : resolve(dirname(file), set.build);
  return {
    ...set,
    build,
    stages: set.stages ?? (await readStages(build)),
    scenes: set.scenes.map((scene) => ({ ...set.views?.[scene.view], ...scene })),
  };
}
