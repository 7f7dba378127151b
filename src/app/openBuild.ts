import type { Build, FileEntry, LicenceFile } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { noSettings, type Role, type RoleName, type Settings } from '#core/settings.ts';
import type { Shot } from '#core/shot.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import type { Section } from '#core/step.ts';
import { readChoices } from '#formats/choices/readChoices.ts';
import { recogniseLicence } from '#formats/licences/recogniseLicence.ts';
import { readErrata } from '#formats/log/readErrata.ts';
import { readLog } from '#formats/log/readLog.ts';
import { looksLike } from '#formats/roles/fileKind.ts';
import type { RoleProposal } from '#formats/roles/proposeRoles.ts';
import { skipReason } from '#formats/roles/skipFile.ts';
import { readFrontMatter, readSettings } from '#formats/settings/readSettings.ts';
import { filesOfRole } from './filesOfRole.ts';
import { pictureProblem } from './pictureProblem.ts';
import type { CachePort, FolderPort, Listing, PicturePort, World } from './ports.ts';
import { allPagesLinked, proposeFolderRoles } from './proposeFolderRoles.ts';
import { readCode } from './readCode.ts';
import { readInstructions } from './readInstructions.ts';
import { readLists } from './readLists.ts';
import { readTexts } from './readTexts.ts';

export const settingsFile = 'twicebuilt.yaml';

/** A folder that was read, with what is needed to go on working in it. */
export interface OpenBuild {
  readonly build: Build;
  readonly folder: FolderPort;
  readonly listing: Listing;
  readonly proposal: RoleProposal;
  readonly cache: CachePort;
  readonly pictures: PicturePort;
}

/**
 * Reads a folder, adopted or not, into records. `shots` says which pictures are looked into: those that the
 * guide shows (enough for checking) or all of them. The caller closes `pictures`.
 */
export async function openBuild(
  folder: FolderPort,
  world: World,
  options: { readonly shots: 'shown' | 'all' } = { shots: 'shown' },
): Promise<OpenBuild> {
  world.progress.report('Looking through the folder', 0, null);
  const listing = await listFolder(folder);
  const paths = new Set(listing.files.map(({ path }) => path));
  const adopted = paths.has(settingsFile);
  const cache = await world.openCache(folder, adopted);
  const { texts, problems } = await readTexts(folder, listing.files);
  const proposal = proposeFolderRoles(listing.files, texts);
  const { settings, problems: settingsProblems } = settingsOf(texts, proposal);
  const roles = mergedRoles(settings.roles, proposal.roles);
  const textsOf = (role: RoleName) => filesOfRole(roles, role, listing.files).flatMap((path) => texts.get(path) ?? []);

  world.progress.report('Reading the texts', 0, null);
  const guide = readInstructions(textsOf('guide'), listing.files);
  const lists = readLists(roles, texts, guide.instructions);
  const code = await readCode(filesOfRole(roles, 'code', listing.files), texts, listing.files, world.grammars);
  const log = textsOf('log').map(readLog);
  const choices = textsOf('choices').map(readChoices);
  const errata = textsOf('errata').map(readErrata);

  const playing = new Set(roles.flatMap(({ role }) => filesOfRole(roles, role, listing.files)));
  const pictures = await world.openPictures(folder, cache);
  const shown = guide.instructions.sections.flatMap(({ pictures: shownHere }) =>
    shownHere.flatMap(({ path }) => path ?? []),
  );
  if (settings.cover !== null) shown.push(settings.cover);
  const wanted = options.shots === 'all' ? filesOfRole(roles, 'shots', listing.files).filter(isShot) : shown;
  const { shots, problems: shotProblems } = await inspectShots(
    wanted.filter((path) => paths.has(path)),
    pictures,
    world,
  );

  const build: Build = {
    name:
      folder.root
        .split(/[\\/]/)
        .filter((part) => part !== '')
        .at(-1) ?? folder.root,
    adopted,
    settings,
    roles,
    files: listing.files,
    partsLists: lists.partsLists,
    parts: lists.parts,
    tools: lists.tools,
    connections: lists.connections,
    instructions: guide.instructions,
    beside: readBeside(textsOf('guide'), playing, texts, listing.files),
    log: log.flatMap(({ notes }) => notes),
    errata: errata.flatMap((entry) => entry.errata),
    sources: code.sources,
    dependencies: code.dependencies,
    targets: code.targets,
    secrets: code.secrets,
    shots,
    choices: choices.flatMap((entry) => entry.choices),
    licences: licencesOf(filesOfRole(roles, 'licences', listing.files), texts),
    texts: textsThatSpeak(texts, roles, listing.files),
    problems: [
      ...problems,
      ...settingsProblems,
      ...rolesOfNothing(settings, listing.files, texts),
      ...guide.problems,
      ...lists.problems,
      ...code.problems,
      ...log.flatMap((entry) => entry.problems),
      ...errata.flatMap((entry) => entry.problems),
      ...choices.flatMap((entry) => entry.problems),
      ...shotProblems,
    ],
  };
  return { build, folder, listing, proposal, cache, pictures };
}

/** Reads a folder and lets go of it. */
export async function readBuild(folder: FolderPort, world: World): Promise<Build> {
  const { build, pictures } = await openBuild(folder, world);
  await pictures.close();
  return build;
}

/** The maker's files: without hidden, vendored and generated ones, and without other repositories inside. */
export async function listFolder(folder: FolderPort): Promise<Listing> {
  const repositories = new Set<Path>();
  const listing = await folder.walk((path, isFolder) => {
    if (path.endsWith('/.git')) repositories.add(path.slice(0, -4));
    return skipReason(path, isFolder);
  });
  if (repositories.size === 0) return listing;
  const inRepository = (path: Path) => [...repositories].some((repository) => path.startsWith(repository));
  return {
    files: listing.files.filter(({ path }) => !inRepository(path)),
    leftOut: [...listing.leftOut, ...[...repositories].map((path) => ({ path, why: 'a repository of its own' }))],
  };
}

function settingsOf(
  texts: ReadonlyMap<Path, SourceText>,
  proposal: RoleProposal,
): { settings: Settings; problems: readonly Problem[] } {
  const file = texts.get(settingsFile);
  const own = file === undefined ? null : readSettings(file);
  const guide =
    own?.settings.roles.find(({ role }) => role === 'guide') ?? proposal.roles.find(({ role }) => role === 'guide');
  const first = texts.get(guide?.places[0]?.split('#')[0] ?? '');
  const front = first === undefined ? null : readFrontMatter(first);
  return {
    settings: { ...noSettings, ...front?.settings, ...(own === null ? {} : stated(own.settings)) },
    problems: [...(own?.problems ?? []), ...(front?.problems ?? [])],
  };
}

/** Places in the settings that name no file of the folder. */
function rolesOfNothing(
  settings: Settings,
  files: readonly FileEntry[],
  texts: ReadonlyMap<Path, SourceText>,
): Problem[] {
  const source = texts.get(settingsFile);
  return settings.roles.flatMap((role) =>
    role.places
      .filter((place) => filesOfRole([{ ...role, places: [place] }], role.role, files).length === 0)
      .map((place) => {
        const at = source?.text.indexOf(place, settings.places.roles?.span[0] ?? 0) ?? -1;
        return {
          place:
            source === undefined || at < 0
              ? { kind: 'file' as const, file: settingsFile }
              : placeOf(source, [at, at + place.length]),
          message: `The settings give the role ${role.role} to ${place}; there is no such file or folder.`,
          remedy: 'Correct the path, or take the line out.',
        };
      }),
  );
}

/** Pages of the folder that the guide sends its reader to, beside those that play a role. */
function readBeside(
  guide: readonly SourceText[],
  playing: ReadonlySet<Path>,
  texts: ReadonlyMap<Path, SourceText>,
  files: readonly FileEntry[],
): Section[] {
  const paths = new Set(texts.keys());
  const linked = new Set(guide.flatMap((source) => allPagesLinked(source, paths)).filter((path) => !playing.has(path)));
  const sources = [...linked].flatMap((path) => texts.get(path) ?? []);
  return readInstructions(sources, files).instructions.sections.map((section) => ({ ...section, role: 'prose' }));
}

/** What a settings file really says, so that its silence does not hide what a guide's head says. */
function stated(settings: Settings): Partial<Settings> {
  return Object.fromEntries(
    Object.entries(settings).filter(([, value]) => value !== null && !(Array.isArray(value) && value.length === 0)),
  ) as Partial<Settings>;
}

/** Roles as the maker has set them; for the others, as they were found. */
function mergedRoles(set: readonly Role[], found: readonly Role[]): Role[] {
  const settled = new Set(set.map(({ role }) => role));
  return [...set, ...found.filter(({ role }) => !settled.has(role))];
}

async function inspectShots(
  paths: readonly Path[],
  pictures: PicturePort,
  world: World,
): Promise<{ shots: Shot[]; problems: Problem[] }> {
  const unique = [...new Set(paths)];
  let done = 0;
  const outcomes = await Promise.all(
    unique.map(async (path) => {
      const result = await pictures.inspect(path);
      world.progress.report('Looking at pictures', ++done, unique.length);
      return { path, result };
    }),
  );
  const shots: Shot[] = [];
  const problems: Problem[] = [];
  for (const { path, result } of outcomes) {
    if (result.ok) shots.push({ path, ...result.value });
    else problems.push(pictureProblem(path, result.reason));
  }
  return { shots, problems };
}

function licencesOf(paths: readonly Path[], texts: ReadonlyMap<Path, SourceText>): LicenceFile[] {
  return paths.map((path) => ({ path, spdx: recogniseLicence(texts.get(path)?.text ?? '') }));
}

/** Texts that somebody reads: those that play a role, and pages beside the guide. */
function textsThatSpeak(
  texts: ReadonlyMap<Path, SourceText>,
  roles: readonly Role[],
  files: readonly FileEntry[],
): Map<Path, SourceText> {
  const playing = new Set(roles.flatMap(({ role }) => filesOfRole(roles, role, files)));
  return new Map([...texts].filter(([path]) => playing.has(path) || looksLike('prose', path)));
}

/** Whether a file is a picture or a clip, by its name. */
export function isShot(path: Path): boolean {
  return looksLike('picture', path) || looksLike('clip', path);
}
