// Scripts of published pages. An import such as './reader/gather.ts?script' is the text of that file and of all it
// imports, bundled and made small for a browser: the program carries them as text and never runs them.
import { rolldown } from 'rolldown';

const suffix = '?script';

/** For rolldown and vite alike. */
export function readerScripts() {
  return {
    name: 'reader-scripts',
    async resolveId(id, importer) {
      if (!id.endsWith(suffix)) return null;
      const found = await this.resolve(id.slice(0, -suffix.length), importer, { skipSelf: true });
      return found === null ? null : `${found.id}${suffix}`;
    },
    async load(id) {
      if (!id.endsWith(suffix)) return null;
      const text = await bundleForBrowser(id.slice(0, -suffix.length));
      return { code: `export default ${JSON.stringify(text)};`, moduleType: 'js' };
    },
  };
}

async function bundleForBrowser(entry) {
  const bundle = await rolldown({
    input: entry,
    platform: 'browser',
    transform: { target: 'es2022' },
    logLevel: 'warn',
  });
  const { output } = await bundle.generate({ format: 'iife', minify: true });
  await bundle.close();
  return output[0].code;
}
