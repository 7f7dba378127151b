import { Failure } from '#core/failure.ts';
import type { PartsList } from '#core/part.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { readPartsList } from '#formats/parts/readPartsList.ts';
import { decodeText } from '#formats/text/decodeText.ts';
import { hashOf } from './hash.ts';
import { openBuild } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';

export interface PartsListing {
  readonly lists: readonly (PartsList & { readonly file: Path })[];
  readonly problems: readonly Problem[];
}

/** The parts lists of a folder. */
export async function listParts(folder: FolderPort, world: World): Promise<PartsListing> {
  const { build, pictures } = await openBuild(folder, world);
  await pictures.close();
  const files = new Set(build.partsLists.map(({ file }) => file));
  return { lists: build.partsLists, problems: build.problems.filter(({ place }) => files.has(place.file)) };
}

/** One file, read as a parts list whatever its role. */
export async function listPartsOfFile(folder: FolderPort, path: Path): Promise<PartsListing> {
  const bytes = await folder.read(path);
  const decoded = decodeText(path, bytes, await hashOf(bytes));
  if (!decoded.ok) return { lists: [], problems: [decoded.problem] };
  const read = readPartsList(decoded.source);
  if (read === null) {
    throw new Failure(
      'bad-request',
      `${path} was expected to be a parts list; no row in it names columns such as reference, quantity and value.`,
      'Give the table a header row, or name another file.',
    );
  }
  return { lists: [{ ...read.list, file: path }], problems: read.problems };
}
