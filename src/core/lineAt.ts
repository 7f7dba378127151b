import type { Build } from './build.ts';
import type { TextPlace } from './place.ts';

/**
 * What stands at a place, as a reader of the file sees it: its first line in full. Where a credential stands on that
 * line only the place's own words are given, which never hold one.
 */
export function lineAt({ texts, secrets }: Build, place: TextPlace): string {
  const source = texts.get(place.file);
  const start = source?.lineStarts[place.line - 1];
  const isSecret = secrets.some((secret) => secret.place.file === place.file && secret.place.line === place.line);
  if (source === undefined || start === undefined || isSecret) return place.quote;
  return source.text.slice(start).split(/\r\n|\r|\n/, 1)[0] ?? place.quote;
}
