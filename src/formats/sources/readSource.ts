import type { SourceFacts, SourceLanguage } from '#core/code.ts';
import { assert } from '#core/failure.ts';
import type { Path } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import type { SourceContext } from './linking/sourceContext.ts';
import { readSources } from './readSources.ts';

const endings: Readonly<Record<SourceLanguage, RegExp>> = {
  cpp: /\.(ino|pde|c|cc|cpp|cxx|h|hh|hpp|hxx|inl|tpp)$/i,
  python: /\.py$/i,
};

/** The language of a source file by its name, or by its first line where the name has no ending; null for other files. */
export function languageOf(path: Path, headText: string): SourceLanguage | null {
  // A compiled or packed file can carry any name; no source holds a NUL character.
  if (headText.includes('\0')) return null;
  if (endings.cpp.test(path)) return 'cpp';
  if (endings.python.test(path)) return 'python';
  const hasEnding = /[^/]\.[^/.]+$/.test(path);
  return !hasEnding && /^#!.*\b(micro)?python/.test(headText) ? 'python' : null;
}

/** What one source file says on its own. Names that other files define stay unknown; see `readSources`. */
export function readSource(
  source: SourceText,
  language: SourceLanguage,
  tree: SyntaxNode,
  context: SourceContext,
): { facts: SourceFacts; problems: Problem[] } {
  const { sources, problems } = readSources([{ source, language, tree }], context);
  const [facts] = sources;
  assert(facts, 'one file gives one record');
  return { facts, problems };
}
