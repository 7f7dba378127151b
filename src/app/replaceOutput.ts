import { Failure } from '#core/failure.ts';
import type { Hash, Path } from '#core/place.ts';
import { hashOf } from './hash.ts';
import type { FolderPort } from './ports.ts';

/** Lists what the tool wrote into an output folder, so that nothing else is ever touched there. */
const inventoryFile = 'twicebuilt-outputs.json';

/** Contents that a file of ours may have: one, or two while an unfinished publish may have left either. */
type Inventory = Record<Path, Hash[]>;

/**
 * Makes `output/kind/` hold exactly these files. Files of an earlier publish that are no longer wanted are removed;
 * unchanged ones are left alone. What is planned is noted before it is written, so that an interrupted publish can be
 * run again. Refuses, before writing anything, where a file lies there that the tool did not write or that was
 * changed since.
 */
export async function replaceOutput(
  output: FolderPort,
  kind: string,
  files: ReadonlyMap<Path, Uint8Array>,
): Promise<void> {
  const before = await readInventory(output);
  const present = await presentFiles(output, kind);
  await refuseForeignFiles(output, present, before);
  const after: Inventory = Object.fromEntries(Object.entries(before).filter(([path]) => !path.startsWith(`${kind}/`)));
  const planned = new Map<Path, Uint8Array>();
  for (const [path, bytes] of files) {
    const full = `${kind}/${path}`;
    const hash = await hashOf(bytes);
    after[full] = [hash];
    if (!present.has(full) || (await output.hash(full)) !== hash) planned.set(full, bytes);
  }
  const either = (path: Path) => [...new Set([...(before[path] ?? []), ...(after[path] ?? [])])];
  await writeInventory(
    output,
    Object.fromEntries(Object.keys({ ...before, ...after }).map((path) => [path, either(path)])),
  );
  for (const [path, bytes] of planned) await output.write(path, bytes);
  for (const path of present) {
    if (after[path] === undefined) await output.remove(path);
  }
  await writeInventory(output, after);
}

async function readInventory(output: FolderPort): Promise<Inventory> {
  if (!(await output.exists(inventoryFile))) return {};
  try {
    const parsed = JSON.parse(new TextDecoder().decode(await output.read(inventoryFile))) as { files?: unknown };
    if (typeof parsed.files !== 'object' || parsed.files === null) return {};
    return Object.fromEntries(
      Object.entries(parsed.files).map(([path, hashes]) => [path, [hashes].flat().map(String)]),
    );
  } catch (error) {
    if (error instanceof Failure) throw error;
    return {};
  }
}

async function writeInventory(output: FolderPort, inventory: Inventory): Promise<void> {
  const files = Object.fromEntries(Object.entries(inventory).sort(([a], [b]) => (a < b ? -1 : 1)));
  const text = `${JSON.stringify({ format: 1, files }, null, 1)}\n`;
  await output.write(inventoryFile, new TextEncoder().encode(text));
}

async function presentFiles(output: FolderPort, kind: string): Promise<Set<Path>> {
  const { files } = await output.walk((path, isFolder) =>
    isFolder && path !== kind && !path.startsWith(`${kind}/`) ? 'not looked at' : null,
  );
  return new Set(files.map(({ path }) => path).filter((path) => path.startsWith(`${kind}/`)));
}

async function refuseForeignFiles(output: FolderPort, present: ReadonlySet<Path>, ours: Inventory): Promise<void> {
  for (const path of present) {
    const known = ours[path];
    if (known?.includes(await output.hash(path))) continue;
    throw new Failure(
      'output-not-ours',
      known === undefined
        ? `${output.root}/${path} was not written by an earlier publish.`
        : `${output.root}/${path} was changed after it was published; publishing again would lose that.`,
      'Move it elsewhere, or choose another folder with --to.',
    );
  }
}
