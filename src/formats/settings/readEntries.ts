import type { TextPlace } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { noSettings, type Settings } from '#core/settings.ts';
import { readAccepted } from './readAccepted.ts';
import { placesOfLicences, readLicences } from './readLicences.ts';
import { readRoles } from './readRoles.ts';
import settingsKeys from './settingsKeys.json';
import { readText, readWords, type SettingContext } from './settingValue.ts';
import type { YamlEntry, YamlReader, YamlValue } from './yamlRecord.ts';

export type SettingKey = Exclude<keyof Settings, 'places'>;

/** Settings that a map states, with the place of each key. */
export interface Stated {
  readonly settings: Partial<Settings>;
  readonly problems: Problem[];
}

/** The highest format number that this version reads. */
const newestFormat = 1;

/** Reads the settings among the entries of a map. Other entries, and empty ones, are passed over. */
export function readEntries(reader: YamlReader, entries: readonly YamlEntry[], file: string): Stated {
  const stated: Record<string, unknown> = {};
  const places: Record<string, TextPlace> = {};
  const problems: Problem[] = [];
  for (const { key: written, place, value } of entries) {
    const key = keyOf(written);
    if (key === null) continue;
    places[key] = place;
    if (reader.isNothing(value)) continue;
    if (key === 'licences') Object.assign(places, placesOfLicences(value, reader));
    const misfit = (at: YamlValue, expected: string) => {
      problems.push({
        place: at === null ? place : reader.placeOf(at),
        message: `'${written}' was expected to be ${expected}, but reads otherwise.`,
        remedy: `Write it as ${expected}. Until then this value is not used.`,
      });
    };
    const read = readSetting(key, value, file, { reader, misfit });
    if (read !== null) stated[key] = read;
  }
  return { settings: { ...(stated as Partial<Settings>), places }, problems };
}

/** The setting that a key stands for, however it is cased and spaced; null where it is none. */
export function keyOf(written: string): SettingKey | null {
  const plain = plainKey(written);
  const same = settingsKeys.keys.find((key) => plainKey(key) === plain);
  return (same ?? new Map(Object.entries(settingsKeys.alsoReadAs)).get(plain) ?? null) as SettingKey | null;
}

function plainKey(key: string): string {
  return key.toLowerCase().replace(/[\s_-]/g, '');
}

function readSetting(key: SettingKey, value: YamlValue, file: string, context: SettingContext): unknown {
  switch (key) {
    case 'format':
      return readFormat(value, context);
    case 'title':
    case 'summary':
    case 'status':
    case 'revision':
    case 'supply':
    case 'language':
    case 'cover':
    case 'reports':
    case 'site':
      return readText(value, context);
    case 'authors':
    case 'skills':
    case 'dismissedRules':
    case 'impactDone':
    case 'declined':
      return readWords(value, context);
    case 'licences':
      return readLicences(value, context);
    case 'roles':
      return readRoles(value, file, context);
    case 'accepted':
      return readAccepted(value, context);
  }
}

function readFormat(value: YamlValue, context: SettingContext): number {
  const format = Number(context.reader.textOf(value) ?? Number.NaN);
  if (Number.isInteger(format) && format >= 1) {
    if (format > newestFormat) context.misfit(value, `at most ${newestFormat}, the newest that this version knows`);
    return format;
  }
  context.misfit(value, 'a whole number from 1');
  return noSettings.format;
}
