import type { Path } from '#core/place.ts';
import { isShot, listFolder, settingsFile } from './openBuild.ts';
import type { FolderPort, ShotFacts, ShotMeasures, World } from './ports.ts';

/** One picture as it was read and measured. */
export interface Look extends ShotFacts {
  readonly path: Path;
  readonly measures: ShotMeasures;
}

export interface Looking {
  readonly shots: readonly Look[];
  readonly leftOut: readonly { readonly path: Path; readonly reason: string }[];
}

/**
 * Measures the pictures of a folder, or those of its `files`. Nothing is written but the cache; what was measured before
 * is not measured again.
 */
export async function look(folder: FolderPort, files: readonly Path[] | null, world: World): Promise<Looking> {
  world.progress.report('Looking for pictures', 0, null);
  const paths = files ?? (await listFolder(folder)).files.map(({ path }) => path).filter(isShot);
  const pictures = await world.openPictures(folder, await world.openCache(folder, await folder.exists(settingsFile)));
  let done = 0;
  try {
    const outcomes = await Promise.all(
      paths.map(async (path) => {
        const facts = await pictures.inspect(path);
        const measures = facts.ok ? await pictures.measure(path) : facts;
        world.progress.report('Measuring pictures', ++done, paths.length);
        return { path, facts, measures };
      }),
    );
    return {
      shots: outcomes.flatMap(({ path, facts, measures }) =>
        facts.ok && measures.ok ? [{ path, ...facts.value, measures: measures.value }] : [],
      ),
      leftOut: outcomes.flatMap(({ path, measures }) => (measures.ok ? [] : [{ path, reason: measures.reason }])),
    };
  } finally {
    await pictures.close();
  }
}
