import type { SourceLanguage } from '#core/code.ts';
import type { Path } from '#core/place.ts';

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
