// Does the main job on the demo, then serves the published guide until interrupted; with --once it ends after the job.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { ensureBuilt, ensureInstalled, root } from './lib/fresh.mjs';

ensureInstalled();
ensureBuilt();
const serve = process.argv.includes('--once') ? [] : ['--serve'];
const program = path.join(root, 'bin/twicebuilt.mjs');
const args = ['publish', path.join(root, 'demo/tide-lamp'), '--to', path.join(root, 'out/tide-lamp'), ...serve];
// The interrupt that ends the serving goes to both processes; this one waits for the other to close.
process.on('SIGINT', () => {});
const result = spawnSync(process.execPath, [program, ...args], { stdio: 'inherit' });
process.exitCode = result.status ?? 2;
