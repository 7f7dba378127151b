import type { Build } from '#core/build.ts';
import type { Path, Place } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';

/** The line of a manifest that gives a setting; the file where it cannot be told. */
export function lineOfSetting(build: Build, file: Path, key: string, value: string): Place {
  const source = build.texts.get(file);
  const whole: Place = { kind: 'file', file };
  if (source === undefined) return whole;
  for (const match of source.text.matchAll(new RegExp(`^[ \\t-]*["']?${key}["']?[ \\t]*[=:].*$`, 'gm'))) {
    if (match[0].includes(value)) return placeOf(source, [match.index, match.index + match[0].trimEnd().length]);
  }
  return whole;
}
