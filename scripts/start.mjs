// Does the main job on the demo, then serves the published guide until interrupted.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { ensureBuilt, ensureInstalled, root } from './lib/fresh.mjs';

ensureInstalled();
ensureBuilt();
const once = process.argv.includes('--once');
const demo = path.join(root, 'demo/tide-lamp');
const program = path.join(root, 'bin/twicebuilt.mjs');
const to = path.join(root, 'out/tide-lamp');
const result = spawnSync(
  process.execPath,
  [program, 'publish', demo, '--to', to, '--summary', ...(once ? [] : ['--serve'])],
  {
    cwd: root,
    stdio: 'inherit',
  },
);
process.exitCode = result.status ?? 2;
