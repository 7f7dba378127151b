import type { TextPlace } from '#core/place.ts';

/** The place of a piece of a place's words; `start` and `end` are UTF-16 code units of its quote. */
export function placeInside(place: TextPlace, start: number, end: number): TextPlace {
  let breaks = 0;
  let lineStart = 0;
  for (let at = 0; at < start; at++) {
    const code = place.quote.charCodeAt(at);
    if (code !== 10 && code !== 13) continue;
    if (code === 13 && at + 1 < start && place.quote.charCodeAt(at + 1) === 10) at++;
    breaks++;
    lineStart = at + 1;
  }
  return {
    kind: 'text',
    file: place.file,
    span: [place.span[0] + start, place.span[0] + end],
    line: place.line + breaks,
    column: breaks === 0 ? place.column + start : start - lineStart + 1,
    quote: place.quote.slice(start, end),
  };
}
