import type { FileEntry } from '#core/build.ts';
import { digestOf } from '#core/digest.ts';
import type { Path } from '#core/place.ts';
import { hashOf } from './hash.ts';
import { listFolder, settingsFile } from './openBuild.ts';
import type { CachePort, FolderPort, World } from './ports.ts';
import { mayBeText } from './readTexts.ts';

/** What came of the work, in what JSON can hold, and the originals that went into it. */
export interface Done<Told> {
  readonly told: Told;
  readonly originals: readonly Path[];
}

/** What was told, and the content of all that it rests on: originals by path, and what lies in the output. */
interface Kept<Told> {
  readonly told: Told;
  readonly originals: Hashes;
  readonly outputs: Hashes;
}

type Hashes = Readonly<Record<Path, string>>;

/** Of pictures and clips this much is looked at, in bytes; those that were used are then read whole. */
const headBytes = 65_536;

/**
 * Does `work` only where something changed since it was last done with the same `wishes`: a file of the folder, one
 * of those written into `output`, the day, or the program itself. Else it answers what was told then.
 */
export async function unlessUnchanged<Told>(
  folder: FolderPort,
  output: FolderPort,
  world: World,
  wishes: readonly unknown[],
  work: () => Promise<Done<Told>>,
): Promise<Told> {
  if (world.program === null) return (await work()).told;
  const cache = await world.openCache(folder, await folder.exists(settingsFile));
  const asked = [world.program, world.now().slice(0, 10), output.root, ...wishes];
  const before = await keptUnder<Told>(await keyOf(folder, asked), cache);
  if (
    before !== null &&
    (await isAsItWas(before.originals, folder)) &&
    (await isAllThatLiesIn(output, before.outputs))
  ) {
    return before.told;
  }
  const { told, originals } = await work();
  const kept: Kept<Told> = {
    told,
    originals: await hashesOf(originals, folder),
    outputs: await hashesOf(
      (await output.walk(() => null)).files.map(({ path }) => path),
      output,
    ),
  };
  // The key is made after the work, which may have noted new facts in the folder's history.
  await cache.put(await keyOf(folder, asked), new TextEncoder().encode(JSON.stringify(kept)));
  return told;
}

async function keyOf(folder: FolderPort, asked: readonly unknown[]): Promise<string> {
  const { files } = await listFolder(folder);
  const looks = await Promise.all(files.map((file) => lookAt(file, folder)));
  return `told/${digestOf(JSON.stringify([asked, looks]))}`;
}

async function lookAt({ path, bytes }: FileEntry, folder: FolderPort): Promise<[Path, number, string]> {
  const look = mayBeText(path) ? await folder.hash(path) : await hashOf(await folder.readHead(path, headBytes));
  return [path, bytes, look];
}

async function hashesOf(paths: readonly Path[], folder: FolderPort): Promise<Hashes> {
  return Object.fromEntries(await Promise.all(paths.map(async (path) => [path, await folder.hash(path)])));
}

async function keptUnder<Told>(key: string, cache: CachePort): Promise<Kept<Told> | null> {
  const data = await cache.get(key);
  return data === null ? null : (JSON.parse(new TextDecoder().decode(data)) as Kept<Told>);
}

async function isAsItWas(before: Hashes, folder: FolderPort): Promise<boolean> {
  const now = await hashesOf(Object.keys(before), folder);
  return Object.entries(before).every(([path, hash]) => now[path] === hash);
}

async function isAllThatLiesIn(output: FolderPort, before: Hashes): Promise<boolean> {
  const { files } = await output.walk(() => null);
  return files.length === Object.keys(before).length && files.every(({ path }) => path in before)
    ? isAsItWas(before, output)
    : false;
}
