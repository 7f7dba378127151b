import type { Build } from '#core/build.ts';
import type { FoundHazard } from '#core/hazard.ts';
import { readFacts } from '#prose/readFacts.ts';
import { openBuild } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';

export interface CautionListing {
  readonly build: Build;
  readonly hazards: readonly FoundHazard[];
}

/** What is said where no listed hazard was found: never that a build is safe. */
export const nothingFound =
  'No listed hazard was found in the data given. That does not make the build safe: what no list, step or word tells of cannot be found.';

/** The hazards that a folder's build brings with it, and what its guide says of them. */
export async function listCautions(folder: FolderPort, world: World): Promise<CautionListing> {
  const { build, pictures } = await openBuild(folder, world);
  await pictures.close();
  return { build, hazards: readFacts(build).hazards };
}
