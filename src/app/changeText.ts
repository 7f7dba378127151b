import type { Edit } from '#core/edit.ts';
import { Failure } from '#core/failure.ts';
import type { Path } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { applyEdit } from '#formats/edit/applyEdit.ts';
import { decodeText } from '#formats/text/decodeText.ts';
import { hashOf } from './hash.ts';
import type { FolderPort } from './ports.ts';

/** What is to become of a text; each edit is made on what the one before left. Null: nothing to do. */
export type TextChange = (source: SourceText) => Edit | null;

/**
 * Changes one text file of the maker's, edit after edit, and writes it once, only if nobody else has changed it in the
 * meantime. Returns whether anything was written. Throws `Failure` where the file cannot be read or an edit is refused;
 * then nothing is written.
 */
export async function changeText(folder: FolderPort, file: Path, changes: readonly TextChange[]): Promise<boolean> {
  const before = await folder.read(file);
  const base = await hashOf(before);
  let bytes = before;
  for (const change of changes) {
    const source = await sourceOf(file, bytes);
    const edit = change(source);
    if (edit === null) continue;
    const applied = applyEdit(source, bytes, edit);
    if (!applied.ok) throw new Failure('bad-request', `${file}: ${applied.problem.message}`, applied.problem.remedy);
    bytes = applied.bytes;
  }
  if (bytes === before) return false;
  await folder.write(file, bytes, { base });
  return true;
}

async function sourceOf(file: Path, bytes: Uint8Array): Promise<SourceText> {
  const decoded = decodeText(file, bytes, await hashOf(bytes));
  if (!decoded.ok) throw new Failure('bad-request', `${file}: ${decoded.problem.message}`, decoded.problem.remedy);
  return decoded.source;
}
