// Writes what is known of each frame of a set, from the geometry of its scenes.
// Usage: node demo/scenes/writeTruth.mjs [--set FILE] [--to FILE]

import { writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { readSet } from './readSet.mjs';
import { truthOf } from './truthOf.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const { values: asked } = parseArgs({
  options: {
    set: { type: 'string', default: join(here, 'tide-lamp.json') },
    to: { type: 'string', default: join(here, 'truth.json') },
  },
});
const truth = truthOf(await readSet(asked.set));
await writeFile(asked.to, `[\n${truth.map((frame) => JSON.stringify(frame)).join(',\n')}\n]\n`);
