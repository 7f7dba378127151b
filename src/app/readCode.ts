import type { FileEntry } from '#core/build.ts';
import type { BuildTarget, Dependency, Secret, SourceFacts } from '#core/code.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { rememberFor } from '#core/remember.ts';
import type { SourceText } from '#core/sourceText.ts';
import { isManifest, readManifest } from '#formats/manifests/readManifest.ts';
import { isBesideTheProduct } from '#formats/roles/skipFile.ts';
import { languageOf } from '#formats/sources/languageOf.ts';
import { readSources } from '#formats/sources/readSources.ts';
import { findRepeatedSecrets, findSecretsInText } from '#formats/sources/secrets.ts';
import type { GrammarPort } from './ports.ts';
import { fileFinder, looseFinder } from './readInstructions.ts';

/** What the build's code says: pins, libraries, numbers, and credentials in any of its texts. */
export async function readCode(
  codeFiles: readonly Path[],
  texts: ReadonlyMap<Path, SourceText>,
  files: readonly FileEntry[],
  grammars: GrammarPort,
): Promise<{
  sources: SourceFacts[];
  dependencies: Dependency[];
  targets: BuildTarget[];
  secrets: Secret[];
  problems: Problem[];
}> {
  const parsed = [];
  for (const path of codeFiles) {
    const source = texts.get(path);
    const language = languageOf(path, source?.text.slice(0, 500) ?? '');
    if (source === undefined || language === null || isBesideTheProduct(path)) continue;
    parsed.push({ source, language, tree: await grammars.parse(language, source.text) });
  }
  const code = readSources(parsed, { fileExists: fileFinder(files), fileNearly: looseFinder(files) });
  const manifests = [...texts.values()]
    .filter(({ file }) => isManifest(file) && !isBesideTheProduct(file))
    .map((source) => ({ file: source.file, ...manifestIn(source) }));
  const own = [...texts.values()].filter(({ file }) => !isBesideTheProduct(file));
  const secrets = allSecrets(code.sources, own);
  return {
    sources: code.sources,
    dependencies: manifests.flatMap(({ dependencies }) => dependencies),
    targets: manifests.flatMap(({ file, board, settings }) =>
      board === null && Object.keys(settings).length === 0 ? [] : [{ file, board, settings }],
    ),
    secrets: [...secrets, ...findRepeatedSecrets(own, secrets)],
    problems: [...code.problems, ...manifests.flatMap(({ problems }) => problems)],
  };
}

// Nothing but the text decides.
const secretsIn = rememberFor(findSecretsInText);
const manifestIn = rememberFor(readManifest);

/** Credentials that the grammar shows, and those that stand in other texts and in comments. */
function allSecrets(sources: readonly SourceFacts[], texts: readonly SourceText[]): Secret[] {
  const inCode = sources.flatMap(({ secrets }) => secrets);
  const known = (one: Secret) =>
    inCode.some(
      ({ place }) =>
        place.file === one.place.file && place.span[0] < one.place.span[1] && one.place.span[0] < place.span[1],
    );
  return [...inCode, ...texts.flatMap(secretsIn).filter((one) => !known(one))];
}
