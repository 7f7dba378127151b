import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import type { CachePort, CleanReport, FolderPort, PicturePort, Result, ShotFacts, ShotMeasures } from '#app/ports.ts';
import { Failure } from '#core/failure.ts';
import type { AssetWant } from '#core/shot.ts';
import {
  cleanFromCache,
  cleanToCache,
  inspectFromCache,
  inspectToCache,
  measuresFromCache,
  measuresToCache,
} from './cachedAnswers.ts';
import { openCrewHere, openCrewOfWorkers } from './pictureCrew.ts';
import { type PictureFile, readPictureFile } from './readPictureFile.ts';
import { takingTurns } from './takingTurns.ts';

export interface PictureOptions {
  /** How many pictures are worked on side by side. Each takes up to some 250 MB. */
  readonly workers?: number;
  /** The bundled worker; null to work in this thread. */
  readonly workerFile?: URL | null;
  /** Longest time for one picture, in milliseconds. */
  readonly limitMs?: number;
}

/** Work on the pictures of a folder, in worker threads where the program is bundled. Results are cached by content. */
export async function openPictures(
  folder: FolderPort,
  cache: CachePort,
  options: PictureOptions = {},
): Promise<PicturePort> {
  const { workers = Math.min(4, availableParallelism()), workerFile = bundledWorker(), limitMs = 60_000 } = options;
  const crew = workerFile ? openCrewOfWorkers(workerFile, { limitMs }) : openCrewHere();
  const inTurn = takingTurns(workers);

  const inspect = async ({ hash, bytes, fileBytes }: PictureFile): Promise<Result<ShotFacts>> => {
    const known = await inspectFromCache(cache, hash);
    if (known) return { ok: true, value: known };
    const answer = await crew.run({ do: 'inspect', bytes, hash, fileBytes });
    if (answer.ok) await inspectToCache(cache, hash, answer.value);
    return answer;
  };
  const clean = async ({ hash, bytes }: PictureFile, want: AssetWant, name: string): Promise<Result<CleanReport>> => {
    const known = await cleanFromCache(cache, hash, want, name);
    if (known) return { ok: true, value: known };
    const answer = await crew.run({ do: 'clean', bytes, want, name });
    if (answer.ok) await cleanToCache(cache, hash, want, answer.value);
    return answer;
  };
  const measure = async ({ hash, bytes }: PictureFile): Promise<Result<ShotMeasures>> => {
    const known = await measuresFromCache(cache, hash);
    if (known) return { ok: true, value: known };
    const answer = await crew.run({ do: 'measure', bytes });
    if (answer.ok) await measuresToCache(cache, hash, answer.value);
    return answer;
  };
  const withFile = <T>(path: string, work: (file: PictureFile) => Promise<Result<T>>): Promise<Result<T>> =>
    // A file is read only when its turn comes: hundreds in memory at once would be too many.
    inTurn(async () => {
      const file = await oneFile(folder, path);
      return file.ok ? work(file.value) : file;
    });

  return {
    inspect: (path) => withFile(path, inspect),
    clean: (want, name) => withFile(want.shot, (file) => clean(file, want, name)),
    measure: (path) => withFile(path, measure),
    compare: (first, second) =>
      withFile(first, async ({ bytes }) => {
        // In the turn of the first: where there is but one turn, a second would be waited for without end.
        const other = await oneFile(folder, second);
        return other.ok ? crew.run({ do: 'compare', bytes, second: other.value.bytes }) : other;
      }),
    flatten: (path, wish) => withFile(path, ({ bytes }) => crew.run({ do: 'flatten', bytes, wish })),
    close: () => crew.close(),
  };
}

/** `pictureWorker.js` lies beside the bundled program and not among the sources. */
function bundledWorker(): URL | null {
  const file = new URL('./pictureWorker.js', import.meta.url);
  return file.protocol === 'file:' && existsSync(file) ? file : null;
}

async function oneFile(folder: FolderPort, path: string): Promise<Result<PictureFile>> {
  try {
    return await readPictureFile(folder, path);
  } catch (error) {
    // One file that cannot be read must not stop the rest.
    if (error instanceof Failure) return { ok: false, reason: `${error.message} ${error.hint}` };
    throw error;
  }
}
