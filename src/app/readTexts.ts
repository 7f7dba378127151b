import type { FileEntry } from '#core/build.ts';
import { Failure } from '#core/failure.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import { looksLike, looksLikeLicence } from '#formats/roles/fileKind.ts';
import { languageOf } from '#formats/sources/languageOf.ts';
import { decodeText } from '#formats/text/decodeText.ts';
import { hashOf } from './hash.ts';
import { keptTexts } from './keptTexts.ts';
import type { FolderPort } from './ports.ts';

/** Larger files are no text that a person wrote by hand. */
const largestText = 4_000_000;

/** Every file of the folder that is text, decoded; and those that should be but could not be read. */
export async function readTexts(
  folder: FolderPort,
  files: readonly FileEntry[],
): Promise<{ texts: Map<Path, SourceText>; problems: Problem[] }> {
  const texts = new Map<Path, SourceText>();
  const problems: Problem[] = [];
  for (const { path, bytes } of files) {
    if (!mayBeText(path)) continue;
    if (bytes > largestText) {
      problems.push(tooLarge(path, bytes));
      continue;
    }
    const outcome = await readText(folder, path);
    if ('text' in outcome) texts.set(path, outcome);
    else problems.push(outcome);
  }
  return { texts, problems };
}

/** A text that did not change stays the same record, so that what was read out of it is still known. */
const decoded = keptTexts();

async function readText(folder: FolderPort, path: Path): Promise<SourceText | Problem> {
  try {
    const content = await folder.read(path);
    const hash = await hashOf(content);
    const known = decoded.get(path, hash);
    if (known !== null) return known;
    const outcome = decodeText(path, content, hash);
    if (!outcome.ok) return outcome.problem;
    decoded.add(outcome.source);
    return outcome.source;
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    return { place: { kind: 'file', file: path }, message: error.message, remedy: error.hint };
  }
}

/** Whether a file is read as text, by its name. */
export function mayBeText(path: Path): boolean {
  return (
    looksLike('text', path) ||
    looksLikeLicence(path) ||
    languageOf(path, '') !== null ||
    /(^|\/)(readme|\.env)$/i.test(path)
  );
}

function tooLarge(path: Path, bytes: number): Problem {
  return {
    place: { kind: 'file', file: path },
    message: `The file is ${Math.round(bytes / 1e6)} MB; text of at most ${largestText / 1e6} MB is read.`,
    remedy: 'If it matters to a builder, split it or move the data out of it.',
  };
}
