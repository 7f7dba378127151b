// Bundles TypeScript of the checkout for Node. Packages stay in node_modules.
import path from 'node:path';
import { rolldown } from 'rolldown';
import { root } from './fresh.mjs';
import { readerScripts } from './readerScripts.mjs';

export async function bundleForNode(input, folder) {
  const bundle = await rolldown({
    cwd: root,
    input,
    platform: 'node',
    plugins: [readerScripts()],
    // JSON from packages is taken in: Node warns about importing it.
    external: (id) => !id.startsWith('.') && !id.startsWith('#') && !path.isAbsolute(id) && !id.endsWith('.json'),
    logLevel: 'warn',
  });
  await bundle.write({ dir: folder, format: 'esm', sourcemap: true, chunkFileNames: '[name].js' });
  await bundle.close();
}
