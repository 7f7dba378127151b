import type { Secret } from '#core/code.ts';
import type { Path } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { withheld } from '#formats/sources/secrets.ts';

// Shorter ones turn up by chance in other words.
const shortest = 6;

/** The words of credentials found in a build, longest first. Names of networks are left out: they may be ordinary words. */
export function wordsToWithhold(secrets: readonly Secret[], texts: ReadonlyMap<Path, SourceText>): string[] {
  const words = secrets
    .filter(({ kind }) => kind !== 'wifi-name')
    .map(({ place }) => texts.get(place.file)?.text.slice(...place.span) ?? '')
    .filter((word) => word.length >= shortest);
  return [...new Set(words)].sort((a, b) => b.length - a.length);
}

/** A document, every text in it without those words, wherever they stand. */
export function withholdWords<T>(document: T, words: readonly string[]): T {
  return words.length === 0 ? document : (withoutWords(document, words) as T);
}

function withoutWords(value: unknown, words: readonly string[]): unknown {
  if (typeof value === 'string') return words.reduce((text, word) => text.replaceAll(word, withheld), value);
  if (Array.isArray(value)) return value.map((item) => withoutWords(item, words));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, withoutWords(item, words)]));
}
