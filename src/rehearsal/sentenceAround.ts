import type { Build } from '#core/build.ts';
import type { TextPlace } from '#core/place.ts';

/** The sentence in which some words stand; the words alone where their text is not at hand. */
export function sentenceAround(build: Build, place: TextPlace): string {
  const text = build.texts.get(place.file)?.text;
  if (text === undefined) return place.quote;
  const [from, to] = place.span;
  const before = text.slice(Math.max(0, from - reach), from);
  const after = text.slice(to, to + reach);
  const start = Math.max(
    ...[...before.matchAll(/[.!?](?=\s)|\n\s*\n|\n(?=\s*(?:[-*#]|\d+\.))/g)].map(
      ({ index, 0: mark }) => index + mark.length,
    ),
    0,
  );
  const end = /[.!?](?=\s|$)|\n\s*\n|\n(?=\s*(?:[-*#]|\d+\.))/.exec(after)?.index ?? after.length;
  return (before.slice(start) + place.quote + after.slice(0, end)).trim();
}

/** Longer sentences are cut. */
const reach = 400;
