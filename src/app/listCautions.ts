import type { Build } from '#core/build.ts';
import type { Facts } from '#core/facts.ts';
import type { FoundHazard } from '#core/hazard.ts';
import { otherLanguage } from '#prose/language/languageOf.ts';
import { readFacts } from '#prose/readFacts.ts';
import { openBuild } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';

export interface CautionListing {
  readonly build: Build;
  readonly hazards: readonly FoundHazard[];
  /** Said of the whole: that nothing was found, or that the guide's words cannot be read; null otherwise. */
  readonly note: string | null;
}

/** What is said where no listed hazard was found: never that a build is safe. */
const nothingFound =
  'No listed hazard was found in the data given. That does not make the build safe: what no list, step or word tells of cannot be found.';

/** The hazards that a folder's build brings with it, and what its guide says of them. */
export async function listCautions(folder: FolderPort, world: World): Promise<CautionListing> {
  const { build, pictures } = await openBuild(folder, world);
  await pictures.close();
  const facts = readFacts(build);
  return { build, hazards: facts.hazards, note: noteOnHazards(facts) };
}

/** What is said of the hazards as a whole: that none was found, or that the guide's words cannot be read. */
export function noteOnHazards({ hazards, language }: Facts): string | null {
  const other = otherLanguage(language);
  if (other !== null) return notRead(other);
  return hazards.length === 0 ? nothingFound : null;
}

/** What is said of a guide in another language: nothing found in it means nothing. */
function notRead(language: string): string {
  return `The guide is in ${language}, and hazards and cautions are read by English words: what its steps bring with them, and whether it warns of that, cannot be told. Only grave hazards that lists and declared facts name in English are looked for.`;
}
