// Costs of the main commands on a large build, as ratios to a calibration job on the same machine.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { root } from '../scripts/lib/fresh.mjs';
import { writeBigBuild } from './bigBuild.mjs';

const runs = 5;

/** Prints one line a command: median seconds, ratio to the calibration, peak memory. */
export async function bench() {
  const folder = mkdtempSync(path.join(tmpdir(), 'twicebuilt-bench-'));
  process.env.XDG_CACHE_HOME = path.join(folder, 'cache');
  const size = { steps: 200, parts: 300, connections: 400 };
  const rows = [];
  try {
    const build = path.join(folder, 'build');
    const calibration = median(Array.from({ length: runs }, calibrate));
    print(`Calibration: hashing 64 MB takes ${calibration.toFixed(3)} s here.`);
    print(`Build: ${size.steps} steps, ${size.parts} parts, ${size.connections} connections; medians of ${runs} runs.`);
    rows.push(
      measure(
        'adopt',
        build,
        (at) => {
          rmSync(at, { recursive: true, force: true });
          writeBigBuild(at, size);
        },
        ['adopt', build, '--json'],
      ),
    );
    rows.push(
      measure(
        'check, cold',
        build,
        (at) => {
          rmSync(path.join(at, '.twicebuilt'), { recursive: true, force: true });
        },
        ['check', build, '--json'],
      ),
    );
    rows.push(
      measure(
        'check, after one edit',
        build,
        (at, run) => {
          const file = path.join(at, 'guide.md');
          writeFileSync(
            file,
            readFileSync(file, 'utf8').replace(/Look at each joint[^\n]*/, `Look at each joint, round ${run}.`),
          );
        },
        ['check', build, '--json'],
      ),
    );
    rows.push(measure('an empty start', build, () => {}, ['--version']));
    for (const { title, seconds, megabytes } of rows) {
      print(
        `${title.padEnd(24)} ${seconds.toFixed(3)} s   ${(seconds / calibration).toFixed(2)} × calibration   ${megabytes.toFixed(0)} MB`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function measure(title, build, prepare, args) {
  const seconds = [];
  const memory = [];
  for (let run = 0; run < runs; run++) {
    prepare(build, run);
    const started = process.hrtime.bigint();
    const result = spawnSync(
      process.execPath,
      ['--import', path.join(root, 'bench/peakMemory.mjs'), path.join(root, 'bin/twicebuilt.mjs'), ...args],
      { encoding: 'utf8', maxBuffer: 1e9 },
    );
    seconds.push(Number(process.hrtime.bigint() - started) / 1e9);
    memory.push(Number(/peak (\d+) kB/.exec(result.stderr)?.[1] ?? Number.NaN) / 1024);
    if (result.status === 2) throw new Error(`${title}: ${result.stderr}`);
  }
  return { title, seconds: median(seconds), megabytes: median(memory) };
}

function calibrate() {
  const buffer = Buffer.alloc(64 * 1024 * 1024, 7);
  const started = process.hrtime.bigint();
  createHash('sha256').update(buffer).digest();
  return Number(process.hrtime.bigint() - started) / 1e9;
}

function median(values) {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];
}

function print(line) {
  process.stdout.write(`${line}\n`);
}
