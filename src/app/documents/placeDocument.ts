import type { Place } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';

/** A place as JSON output gives it. */
export function placeDocument(place: Place): Record<string, unknown> {
  switch (place.kind) {
    case 'text':
      return { file: place.file, line: place.line, column: place.column, text: place.quote };
    case 'picture': {
      const { region } = place;
      return {
        file: place.file,
        region: region === undefined ? null : [region.x, region.y, region.width, region.height],
      };
    }
    case 'file':
      return { file: place.file };
  }
}

/** Something that could not be read as meant, as JSON output gives it. */
export function problemDocument(problem: Problem): Record<string, unknown> {
  return { place: placeDocument(problem.place), message: problem.message, remedy: problem.remedy };
}
