import type { Problem } from '#core/problem.ts';
import { noSettings, roleNames, type Settings } from '#core/settings.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import { nearestWord } from './nearestWord.ts';
import { keyOf, readEntries } from './readEntries.ts';
import settingsKeys from './settingsKeys.json';
import { readYaml, type YamlEntry } from './yamlRecord.ts';

export { editSetting, removeEntry, type SettingValue } from './editSetting.ts';
export { formatSettings } from './formatSettings.ts';
export { readFrontMatter } from './readFrontMatter.ts';

/** Reads `twicebuilt.yaml`. Keys it does not know are left alone; those that look mistyped are pointed out. */
export function readSettings(source: SourceText): { settings: Settings; problems: Problem[] } {
  const record = readYaml(source, [0, source.text.length]);
  const problems = [...record.problems];
  if (record.entries === null) {
    if (!record.isEmpty && problems.length === 0) problems.push(noMap(source));
    return { settings: noSettings, problems };
  }
  for (const entry of record.entries) {
    const problem = mistyped(entry);
    if (problem !== null) problems.push(problem);
  }
  const read = readEntries(record.reader, record.entries, source.file);
  return { settings: { ...noSettings, ...read.settings }, problems: [...problems, ...read.problems] };
}

function noMap(source: SourceText): Problem {
  return {
    place: placeOf(source, [0, 0]),
    message: 'The settings were expected to be lines such as `title: My lamp`, but the file holds something else.',
    remedy: 'Begin with `format: 1`, and give each setting a line of its own.',
  };
}

/** A gentle word about a key that is near a setting; null for a setting, and for a key of the maker's own. */
function mistyped({ key, place }: YamlEntry): Problem | null {
  if (keyOf(key) !== null) return null;
  const plain = key.toLowerCase();
  const meant = new Map(Object.entries(settingsKeys.mistakenFor)).get(plain) ?? nearestWord(key, settingsKeys.keys);
  if (meant !== null) {
    return {
      place,
      message: `'${key}' is no setting; '${meant}' was probably meant.`,
      remedy: `Write '${meant}:' instead. Until then the line has no effect.`,
    };
  }
  if (!roleNames.some((role) => role === plain)) return null;
  return {
    place,
    message: `'${key}' is a role, and was expected under 'roles:', but stands on the first level.`,
    remedy: "Move the line under 'roles:' and set it in by two spaces.",
  };
}
