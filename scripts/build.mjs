// Bundles the command line and its workers into dist/.
import { rmSync } from 'node:fs';
import path from 'node:path';
import { bundleForNode } from './lib/bundleForNode.mjs';
import { root } from './lib/fresh.mjs';

const dist = path.join(root, 'dist');
rmSync(dist, { recursive: true, force: true });
await bundleForNode({ main: 'src/cli/main.ts', pictureWorker: 'src/outside/pictureWorker.ts' }, dist);
