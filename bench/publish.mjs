// What publishing the demo again costs against the first time, side by side in one run.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { root } from '../scripts/lib/fresh.mjs';

const runs = 3;

/** Prints seconds of processor time of a first publish, of one after a changed caption, and of one after nothing. */
export async function bench() {
  const folder = mkdtempSync(path.join(tmpdir(), 'twicebuilt-publish-'));
  try {
    const [build, out] = [path.join(folder, 'build'), path.join(folder, 'out')];
    cpSync(path.join(root, 'demo/tide-lamp'), build, {
      recursive: true,
      filter: (source) => !/\/(out|\.twicebuilt)(\/|$)/.test(source.slice(root.length)),
    });
    const guide = path.join(build, 'guide.md');
    const publish = () => seconds(['publish', build, '--to', out, '--json']);
    const times = Array.from({ length: runs }, (_, run) => {
      for (const made of [path.join(build, '.twicebuilt'), out]) rmSync(made, { recursive: true, force: true });
      const first = publish();
      writeFileSync(guide, readFileSync(guide, 'utf8').replace(/"R1 is 330 Ω[^"]*"/, `"R1 is 330 Ω, look ${run}"`));
      return { first, caption: publish(), nothing: publish() };
    });
    const first = median(times.map((time) => time.first));
    process.stdout.write('Publishing the demo; seconds of processor time, medians of three.\n');
    for (const [title, key] of [
      ['the first time', 'first'],
      ['after a changed caption', 'caption'],
      ['after nothing changed', 'nothing'],
    ]) {
      const time = median(times.map((one) => one[key]));
      process.stdout.write(`${title.padEnd(24)} ${time.toFixed(3)} s   ${(time / first).toFixed(3)} of the first\n`);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Processor seconds of one run of the program, its threads included. */
function seconds(args) {
  const { status, stderr } = spawnSync(
    process.execPath,
    ['--import', path.join(root, 'bench/processorTime.mjs'), path.join(root, 'bin/twicebuilt.mjs'), ...args],
    { encoding: 'utf8', maxBuffer: 1e9 },
  );
  if (status === 2) throw new Error(stderr);
  return Number(/processor (\d+) us/.exec(stderr)?.[1]) / 1e6;
}

function median(values) {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];
}
