import type { Dependency, Secret, SourceFacts } from '#core/code.ts';
import { Failure } from '#core/failure.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import { skipReason } from '#formats/roles/skipFile.ts';
import { decodeText } from '#formats/text/decodeText.ts';
import { hashOf } from './hash.ts';
import { openBuild } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';
import { readCode } from './readCode.ts';

export interface PinListing {
  readonly sources: readonly SourceFacts[];
  readonly dependencies: readonly Dependency[];
  readonly secrets: readonly Secret[];
  readonly problems: readonly Problem[];
}

/** Pins, libraries, numbers and credentials in the code of a folder. */
export async function listPins(folder: FolderPort, world: World): Promise<PinListing> {
  const { build, pictures } = await openBuild(folder, world);
  await pictures.close();
  const { sources, dependencies, secrets } = build;
  const code = new Set([...sources.map(({ file }) => file), ...dependencies.map(({ place }) => place.file)]);
  return { sources, dependencies, secrets, problems: build.problems.filter(({ place }) => code.has(place.file)) };
}

/** The same for single files of a folder, whatever their role. */
export async function listPinsOfFiles(folder: FolderPort, paths: readonly Path[], world: World): Promise<PinListing> {
  const texts = new Map<Path, SourceText>();
  const problems: Problem[] = [];
  for (const path of paths) {
    try {
      const bytes = await folder.read(path);
      const decoded = decodeText(path, bytes, await hashOf(bytes));
      if (decoded.ok) texts.set(path, decoded.source);
      else problems.push(decoded.problem);
    } catch (error) {
      if (!(error instanceof Failure)) throw error;
      problems.push({ place: { kind: 'file', file: path }, message: error.message, remedy: error.hint });
    }
  }
  const { files } = await folder.walk(skipReason);
  const code = await readCode(paths, texts, files, world.grammars);
  return { ...code, problems: [...problems, ...code.problems] };
}
