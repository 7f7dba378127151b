import type { TextPlace } from '#core/place.ts';

/** The place of a piece of a place's words; `start` and `end` are UTF-16 code units of its quote. */
export function placeInside(place: TextPlace, start: number, end: number): TextPlace {
  const before = place.quote.slice(0, start);
  const breaks = [...before.matchAll(/\r\n|\r|\n/g)];
  const last = breaks.at(-1);
  return {
    ...place,
    span: [place.span[0] + start, place.span[0] + end],
    line: place.line + breaks.length,
    column: last === undefined ? place.column + start : start - (last.index + last[0].length) + 1,
    quote: place.quote.slice(start, end),
  };
}
