import type { Edit } from '#core/edit.ts';
import { Failure } from '#core/failure.ts';
import type { Finding } from '#core/finding.ts';
import type { Path } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { mergeEdit } from '#formats/edit/mergeEdit.ts';
import { changeText } from './changeText.ts';
import type { Judgement } from './check.ts';
import type { FolderPort } from './ports.ts';

/** A finding with the edit that takes it away. */
export interface Mendable {
  readonly finding: Finding;
  readonly edit: Edit;
  /** The file as the edit was made on it. */
  readonly source: SourceText;
}

/** What became of each finding that was to be mended. */
export interface Mending {
  readonly mended: readonly Finding[];
  readonly refused: readonly { readonly finding: Finding; readonly why: string }[];
}

/** The findings that an edit of one file would take away. */
export function mendable({ findings, judged }: Judgement): Mendable[] {
  return findings.flatMap((finding) => {
    const edit = finding.mend;
    const source = edit === null ? undefined : judged.build.texts.get(edit.file);
    return edit === null || source === undefined ? [] : [{ finding, edit, source }];
  });
}

/**
 * Applies the edits of the findings that the maker has said yes to, file by file. Of edits that touch the same words
 * the first is applied and the others refused, as is everything in a file that somebody else has changed meanwhile.
 */
export async function mendFindings(folder: FolderPort, chosen: readonly Mendable[]): Promise<Mending> {
  const byFile = new Map<Path, Mendable[]>();
  for (const one of chosen) byFile.set(one.edit.file, [...(byFile.get(one.edit.file) ?? []), one]);
  const mended: Finding[] = [];
  const refused: { finding: Finding; why: string }[] = [];
  for (const [file, mends] of byFile) {
    const done: Finding[] = [];
    try {
      await changeText(
        folder,
        file,
        mends.map(({ finding, edit, source: original }) => (source) => {
          const carried = source.hash === edit.base ? edit : mergeEdit(original, source, edit);
          if (carried === null)
            refused.push({ finding, why: 'another change touches the same words; ask again for this one' });
          else done.push(finding);
          return carried;
        }),
      );
      mended.push(...done);
    } catch (error) {
      if (!(error instanceof Failure)) throw error;
      refused.push(...done.map((finding) => ({ finding, why: error.message })));
    }
  }
  return { mended, refused };
}
