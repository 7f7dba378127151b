import type { Path } from '#core/place.ts';
import { withheld as standIn, withholdSecrets } from '#formats/sources/secrets.ts';
import type { PublishedFile } from '#guide/guide.ts';
import { filesOfRole } from './filesOfRole.ts';
import type { OpenBuild } from './openBuild.ts';
import { wordsToWithhold } from './withholdWords.ts';

/** A file that comes with the guide; `data` is null where it is not given out. */
export interface FileBeside {
  readonly row: PublishedFile;
  readonly data: Uint8Array | null;
}

/** Larger files are left where the maker keeps them. */
const largest = 20_000_000;

/**
 * Design files and licence texts as they may leave the folder: texts without the credentials that are recognised,
 * binary STL without the words of its header (80 bytes that programs fill with names). Files of other kinds can hold
 * private fields that nothing takes out here, so they are named and not given out.
 */
export async function filesBeside(open: OpenBuild): Promise<FileBeside[]> {
  const { build } = open;
  const inRole = (role: 'design' | 'licences', purpose: PublishedFile['purpose']) =>
    filesOfRole(build.roles, role, build.files).map((path) => ({ path, purpose }));
  const wanted = [...inRole('design', 'design'), ...inRole('licences', 'licence')];
  const unique = wanted.filter(({ path }, i) => wanted.findIndex((other) => other.path === path) === i);
  return await Promise.all(unique.map(({ path, purpose }) => fileBeside(path, purpose, open)));
}

async function fileBeside(path: Path, purpose: PublishedFile['purpose'], open: OpenBuild): Promise<FileBeside> {
  const bytes = open.build.files.find((file) => file.path === path)?.bytes ?? 0;
  const kept = (withheld: string): FileBeside => ({ row: { path, purpose, bytes, withheld }, data: null });
  if (bytes > largest) return kept(`it is larger than ${largest / 1e6} MB`);
  const data = textOf(path, open) ?? solidOf(await open.folder.read(path));
  if (data === null) return kept('a file of this kind can carry names and places that would leave with it');
  return { row: { path, purpose, bytes: data.length, withheld: null }, data };
}

/** Null where the file is not one of the texts that were read. */
function textOf(path: Path, { build }: OpenBuild): Uint8Array | null {
  const source = build.texts.get(path);
  if (source === undefined) return null;
  const secrets = build.secrets.filter(({ place }) => place.file === path);
  const words = wordsToWithhold(build.secrets, build.texts);
  const text = words.reduce((said, word) => said.replaceAll(word, standIn), withholdSecrets(source, secrets));
  return new TextEncoder().encode(text);
}

/** Binary STL: 80 bytes of header, the number of triangles, and 50 bytes for each. Null for anything else. */
function solidOf(content: Uint8Array): Uint8Array | null {
  if (content.length < 84) return null;
  const triangles = new DataView(content.buffer, content.byteOffset).getUint32(80, true);
  if (content.length !== 84 + 50 * triangles) return null;
  const copy = content.slice();
  copy.fill(0, 0, 80);
  return copy;
}
