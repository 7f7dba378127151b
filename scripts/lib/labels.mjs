// Labels that people made of folders which are not part of this project, and the program's own answers about them.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './fresh.mjs';

/** The labels of a folder; `keyOf` gives the label's name of a text of the folder, found by its digest. */
export function readLabels(folder, file) {
  const labels = JSON.parse(readFileSync(file, 'utf8'));
  const keys = new Map(Object.entries(labels.texts).map(([key, digest]) => [digest, key]));
  const names = new Map();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const full = path.join(entry.parentPath, entry.name);
    const key = keys.get(createHash('sha256').update(readFileSync(full)).digest('hex'));
    if (key !== undefined) names.set(path.relative(folder, full).split(path.sep).join('/'), key);
  }
  const absent = keys.size - new Set(names.values()).size;
  if (absent > 0)
    process.stderr.write(`${absent} of the labelled texts are not in ${folder}; the figures mean little.\n`);
  return { labels, keyOf: (name) => names.get(name) ?? '?' };
}

/** What a command answers about a folder, as its JSON document. Ends the evaluation where it cannot be carried out. */
export function program(command, folder, ...options) {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    [path.join(root, 'bin/twicebuilt.mjs'), command, folder, ...options, '--json'],
    { encoding: 'utf8', maxBuffer: 1e9 },
  );
  if (status !== 0 && status !== 1) {
    process.stderr.write(stderr);
    process.exit(2);
  }
  return JSON.parse(stdout);
}

/** A share with two decimals; a dash where there is nothing to share. */
export function share(part, whole) {
  return whole === 0 ? '–' : (part / whole).toFixed(2);
}
