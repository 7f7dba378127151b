import type { FileEntry } from '#core/build.ts';
import type { Path } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import type { SourceText } from '#core/sourceText.ts';
import { recogniseTable } from '#formats/csv/recogniseTable.ts';
import { recogniseText, type TextRecognised } from '#formats/guide/recogniseText.ts';
import { isManifest } from '#formats/manifests/readManifest.ts';
import { looksLike } from '#formats/roles/fileKind.ts';
import { type Candidate, proposeRoles, type RoleProposal } from '#formats/roles/proposeRoles.ts';
import { languageOf } from '#formats/sources/languageOf.ts';
import { fileFinder } from './readInstructions.ts';

/** Looks into every file and proposes which role it plays. */
export function proposeFolderRoles(files: readonly FileEntry[], texts: ReadonlyMap<Path, SourceText>): RoleProposal {
  const paths = new Set(files.map(({ path }) => path));
  const textIn = textsBy(fileFinder(files));
  return proposeRoles(files.map(({ path }) => candidateOf(path, texts.get(path), paths, textIn)));
}

// A file that did not change is what it was.
const tableIn = rememberFor(recogniseTable);
const textsBy = rememberFor((fileExists: ReturnType<typeof fileFinder>) =>
  rememberFor((source: SourceText) => recogniseText(source, fileExists)),
);

function candidateOf(
  path: Path,
  source: SourceText | undefined,
  paths: ReadonlySet<Path>,
  textIn: (source: SourceText) => TextRecognised,
): Candidate {
  const isProse = looksLike('prose', path);
  const table = source !== undefined && looksLike('table', path) ? tableIn(source) : null;
  const isTable = table !== null && table.kind !== 'other';
  return {
    path,
    table: isTable ? table : null,
    text: source !== undefined && isProse && !isTable ? textIn(source) : null,
    language: languageOf(path, source?.text.slice(0, 500) ?? ''),
    isManifest: isManifest(path),
    linksTo: source !== undefined && isProse ? pagesLinked(source, paths) : [],
  };
}

/** Pages of the folder that a text sends its reader to from within a sentence, in order. */
function pagesLinked(source: SourceText, paths: ReadonlySet<Path>): Path[] {
  return pagesAt(source, paths, /\]\(<?([^)\s>#]+\.(?:md|markdown))(?:#[^)\s>]*)?>?\)/gi);
}

/**
 * The same, with those whose address stands apart in a link definition or is that of the page which a site generator
 * makes of them (`{{ site.base }}/parts.html` of parts.md).
 */
export function allPagesLinked(source: SourceText, paths: ReadonlySet<Path>): Path[] {
  const made = /(?:\]\(|^ {0,3}\[[^\]\r\n]+\]:[ \t]*)<?(?:\{\{[^{}]*\}\}\/?)?([^)\s>#{}]+)\.(?:md|markdown|html?)/gim;
  return pagesAt({ ...source, text: source.text.replace(made, '](<$1.md>)') }, paths, /\]\(<([^)\s>#]+\.md)>\)/g);
}

function pagesAt(source: SourceText, paths: ReadonlySet<Path>, address: RegExp): Path[] {
  const folder = source.file.slice(0, source.file.lastIndexOf('/') + 1);
  return [...source.text.matchAll(address)]
    .map(([, target]) => pathFrom(folder, target ?? ''))
    .filter((path) => path !== null && paths.has(path)) as Path[];
}

/** A relative address as a path of the folder; null where it leads out of it. */
function pathFrom(folder: Path, address: string): Path | null {
  const steps = folder.split('/').filter((step) => step !== '');
  for (const step of address.split('/')) {
    if (step === '..') {
      if (steps.pop() === undefined) return null;
    } else if (step !== '.' && step !== '') {
      steps.push(step);
    }
  }
  return steps.join('/');
}
