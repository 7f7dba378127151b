import { Failure } from '#core/failure.ts';
import { settingsFile } from './openBuild.ts';
import type { FolderPort, World } from './ports.ts';

/** Where outputs go: the folder asked for, else `out/` of an adopted folder. Never among the maker's own files. */
export async function chooseOutput(folder: FolderPort, asked: string | null, world: World): Promise<FolderPort> {
  const own = `${folder.root}/out`;
  const adopted = await folder.exists(settingsFile);
  if (asked === null && !adopted) {
    throw new Failure(
      'bad-request',
      `${folder.root} was not adopted, so nothing is written into it.`,
      'Say where the guide should go with --to, or run adopt first.',
    );
  }
  const wanted = asked === null ? own : await world.absolute(asked);
  const inOwnOut = adopted && isWithin(wanted, own);
  if (!inOwnOut && (isWithin(wanted, folder.root) || isWithin(folder.root, wanted))) {
    throw new Failure(
      'bad-request',
      `${wanted} lies among the files of the build; outputs would mix with them.`,
      'Name a folder outside the build with --to.',
    );
  }
  return world.openOutput(wanted);
}

function isWithin(path: string, folder: string): boolean {
  return path === folder || path.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
}
