import { Failure } from '#core/failure.ts';
import type { Path } from '#core/place.ts';
import type { Comparison, FolderPort, World } from './ports.ts';

/** How the second of two pictures of a folder lies over the first, and where they differ. Writes nothing. */
export async function compare(folder: FolderPort, first: Path, second: Path, world: World): Promise<Comparison> {
  const pictures = await world.openPictures(folder, await world.openCache(folder, false));
  try {
    world.progress.report('Comparing two pictures', 0, null);
    const result = await pictures.compare(first, second);
    if (result.ok) return result.value;
    throw new Failure('bad-request', `${first} and ${second}: ${result.reason}`, 'Nothing was compared.');
  } finally {
    await pictures.close();
  }
}
