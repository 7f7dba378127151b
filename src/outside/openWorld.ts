import type { ProgressPort, World } from '#app/ports.ts';
import { openCache } from './cache/openCache.ts';
import { absolutePath } from './files/absolutePath.ts';
import { openFolder } from './files/openFolder.ts';
import { openOutput } from './files/openOutput.ts';
import { openGrammars } from './grammars/openGrammars.ts';
import { openPictures } from './pictures/openPictures.ts';

/** The real world: this machine's disk, clock, processors and grammars. Progress goes nowhere unless asked for. */
export function openWorld(
  options: { progress?: ProgressPort; now?: () => string; program?: string | null } = {},
): World {
  return {
    grammars: openGrammars(),
    progress: options.progress ?? { report() {} },
    program: options.program ?? null,
    now: options.now ?? (() => new Date().toISOString()),
    absolute: (path) => absolutePath(path),
    openFolder: (path) => openFolder(path),
    openOutput: (path) => openOutput(path),
    openCache,
    openPictures: (folder, cache) => openPictures(folder, cache),
  };
}
