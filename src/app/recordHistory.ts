import type { Build } from '#core/build.ts';
import { type Change, gone } from '#core/change.ts';
import { connectionId } from '#core/connection.ts';
import { digestOf } from '#core/digest.ts';
import type { Key } from '#core/key.ts';
import { formatChange, readHistory } from '#formats/history/history.ts';
import { decodeText } from '#formats/text/decodeText.ts';
import { hashOf } from './hash.ts';
import type { FolderPort, World } from './ports.ts';

const historyFile = 'history.jsonl';

/**
 * Adds to `history.jsonl` every fact that is new, changed or gone since it was last seen there. Returns the whole
 * history, and whether anything was added. Only for folders that were adopted.
 */
export async function recordHistory(
  build: Build,
  folder: FolderPort,
  world: World,
): Promise<{ history: readonly Change[]; added: boolean }> {
  const before = await historyIn(folder);
  if (before === null) return { history: [], added: false };
  const latest = new Map(before.map(({ key, digest }) => [key, digest]));
  const firstSeen = world.now();
  const now = factsOf(build);
  const added = [
    ...now.filter(({ key, digest }) => latest.get(key) !== digest),
    ...missing(latest, new Set(now.map(({ key }) => key))),
  ].map((fact): Change => ({ ...fact, firstSeen }));
  if (added.length > 0) await folder.append(historyFile, `${added.map(formatChange).join('\n')}\n`);
  return { history: [...before, ...added], added: added.length > 0 };
}

/** Facts that are there no longer. Pictures are apart: which of them are looked at differs from run to run. */
function missing(latest: ReadonlyMap<Key, string>, now: ReadonlySet<Key>): { key: Key; digest: string }[] {
  return [...latest]
    .filter(([key, digest]) => digest !== gone && !now.has(key) && followed.test(key))
    .map(([key]) => ({ key, digest: gone }));
}

const followed = /^(?:part|connection|step|code):/;

/** The history as recorded; null where the file of that name is somebody else's. */
async function historyIn(folder: FolderPort): Promise<Change[] | null> {
  if (!(await folder.exists(historyFile))) return [];
  const bytes = await folder.read(historyFile);
  const decoded = decodeText(historyFile, bytes, await hashOf(bytes));
  if (!decoded.ok) return null;
  const { changes, problems } = readHistory(decoded.source);
  return changes.length === 0 && problems.length > 0 ? null : changes;
}

function factsOf(build: Build): { key: Key; digest: string }[] {
  const texts = build.texts;
  return [
    ...build.parts.map((part) => ({ key: `part:${part.id}` as const, digest: digestOf(wordsOfRow(part.place.quote)) })),
    ...build.connections.map((wire) => ({
      key: `connection:${connectionId(wire.from, wire.to)}` as const,
      digest: digestOf(wordsOfRow(wire.place.quote)),
    })),
    ...build.instructions.sections
      .filter(({ role }) => role === 'step')
      .map((step) => ({ key: `step:${step.id}` as const, digest: step.signature })),
    ...build.sources.map(({ file }) => ({ key: `code:${file}` as const, digest: texts.get(file)?.hash ?? '' })),
    ...build.shots.map(({ path, hash }) => ({ key: `shot:${path}` as const, digest: hash })),
  ];
}

/** A row without the blanks round its cells: lining up columns changes nothing that is said. */
function wordsOfRow(row: string): string {
  return row.replace(/[ \t]*([,;|\t])[ \t]*/g, '$1').trim();
}
