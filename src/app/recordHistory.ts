import type { Build } from '#core/build.ts';
import { connectionId } from '#core/connection.ts';
import { digestOf } from '#core/digest.ts';
import type { Key } from '#core/key.ts';
import { formatChange, readHistory } from '#formats/history/history.ts';
import { decodeText } from '#formats/text/decodeText.ts';
import { hashOf } from './hash.ts';
import type { FolderPort, World } from './ports.ts';

const historyFile = 'history.jsonl';

/**
 * Adds to `history.jsonl` every fact that is new or changed since it was last seen there. Returns whether
 * anything was added. Only for folders that were adopted.
 */
export async function recordHistory(build: Build, folder: FolderPort, world: World): Promise<boolean> {
  const latest = await latestDigests(folder);
  if (latest === null) return false;
  const firstSeen = world.now();
  const lines = factsOf(build)
    .filter(({ key, digest }) => latest.get(key) !== digest)
    .map(({ key, digest }) => formatChange({ key, digest, firstSeen }));
  if (lines.length === 0) return false;
  await folder.append(historyFile, `${lines.join('\n')}\n`);
  return true;
}

/** The last digest of each fact; null where the file of that name is somebody else's. */
async function latestDigests(folder: FolderPort): Promise<Map<Key, string> | null> {
  if (!(await folder.exists(historyFile))) return new Map();
  const bytes = await folder.read(historyFile);
  const decoded = decodeText(historyFile, bytes, await hashOf(bytes));
  if (!decoded.ok) return null;
  const { changes, problems } = readHistory(decoded.source);
  if (changes.length === 0 && problems.length > 0) return null;
  return new Map(changes.map(({ key, digest }) => [key, digest]));
}

function factsOf(build: Build): { key: Key; digest: string }[] {
  const texts = build.texts;
  return [
    ...build.parts.map((part) => ({ key: `part:${part.id}` as const, digest: digestOf(part.place.quote) })),
    ...build.connections.map((wire) => ({
      key: `connection:${connectionId(wire.from, wire.to)}` as const,
      digest: digestOf(wire.place.quote),
    })),
    ...build.instructions.sections
      .filter(({ role }) => role === 'step')
      .map((step) => ({ key: `step:${step.id}` as const, digest: step.signature })),
    ...build.sources.map(({ file }) => ({ key: `code:${file}` as const, digest: texts.get(file)?.hash ?? '' })),
    ...build.shots.map(({ path, hash }) => ({ key: `shot:${path}` as const, digest: hash })),
  ];
}
