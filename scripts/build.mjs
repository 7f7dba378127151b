// Bundles the command line and its workers into dist/. Packages stay in node_modules.
import { rmSync } from 'node:fs';
import path from 'node:path';
import { rolldown } from 'rolldown';
import { root } from './lib/fresh.mjs';

rmSync(path.join(root, 'dist'), { recursive: true, force: true });
const bundle = await rolldown({
  cwd: root,
  input: { main: 'src/cli/main.ts', pictureWorker: 'src/outside/pictureWorker.ts' },
  platform: 'node',
  // JSON from packages is taken in: Node warns about importing it.
  external: (id) => !id.startsWith('.') && !id.startsWith('#') && !path.isAbsolute(id) && !id.endsWith('.json'),
  logLevel: 'warn',
});
await bundle.write({ dir: path.join(root, 'dist'), format: 'esm', sourcemap: true, chunkFileNames: '[name].js' });
await bundle.close();
