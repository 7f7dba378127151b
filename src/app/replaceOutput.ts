import { Failure } from '#core/failure.ts';
import type { Path } from '#core/place.ts';
import { hashOf } from './hash.ts';
import type { FolderPort } from './ports.ts';

/** Lists what the tool wrote into an output folder, so that nothing else is ever touched there. */
const inventoryFile = 'twicebuilt-outputs.json';

type Inventory = Record<string, string>;

/**
 * Makes `output/kind/` hold exactly these files. Files of an earlier publish that are no longer wanted are
 * removed; unchanged ones are left alone. Refuses where something lies there that the tool did not write.
 */
export async function replaceOutput(
  output: FolderPort,
  kind: string,
  files: ReadonlyMap<Path, Uint8Array>,
): Promise<void> {
  const before = await readInventory(output);
  await refuseForeignFiles(output, kind, before);
  const after: Inventory = {};
  for (const [path, hash] of Object.entries(before)) {
    if (!path.startsWith(`${kind}/`)) after[path] = hash;
  }
  for (const [path, bytes] of files) {
    const full = `${kind}/${path}`;
    const hash = await hashOf(bytes);
    after[full] = hash;
    if (before[full] !== hash || !(await output.exists(full))) await output.write(full, bytes);
  }
  for (const path of Object.keys(before)) {
    if (after[path] === undefined && (await output.exists(path))) await output.remove(path);
  }
  const sorted = Object.fromEntries(Object.entries(after).sort(([a], [b]) => (a < b ? -1 : 1)));
  await output.write(
    inventoryFile,
    new TextEncoder().encode(`${JSON.stringify({ format: 1, files: sorted }, null, 1)}\n`),
  );
}

async function readInventory(output: FolderPort): Promise<Inventory> {
  if (!(await output.exists(inventoryFile))) return {};
  try {
    const parsed = JSON.parse(new TextDecoder().decode(await output.read(inventoryFile))) as { files?: unknown };
    return typeof parsed.files === 'object' && parsed.files !== null ? (parsed.files as Inventory) : {};
  } catch (error) {
    if (error instanceof Failure) throw error;
    return {};
  }
}

async function refuseForeignFiles(output: FolderPort, kind: string, ours: Inventory): Promise<void> {
  const { files } = await output.walk((path, isFolder) =>
    isFolder && path !== kind && !path.startsWith(`${kind}/`) ? 'not looked at' : null,
  );
  const foreign = files.find(({ path }) => path.startsWith(`${kind}/`) && ours[path] === undefined);
  if (foreign !== undefined) {
    throw new Failure(
      'output-not-ours',
      `${output.root}/${foreign.path} was not written by an earlier publish.`,
      `Choose another folder with --to, or move what lies in ${output.root}/${kind}.`,
    );
  }
}
