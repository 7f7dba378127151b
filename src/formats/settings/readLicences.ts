import type { TextPlace } from '#core/place.ts';
import type { Settings } from '#core/settings.ts';
import { readText, type SettingContext } from './settingValue.ts';
import type { YamlReader, YamlValue } from './yamlRecord.ts';

const expected = "an SPDX identifier, or one each under 'hardware', 'code' and 'text'";

/** Licences of hardware, code and text; a single identifier stands for all three. */
export function readLicences(value: YamlValue, context: SettingContext): Settings['licences'] | null {
  const entries = context.reader.entriesOf(value);
  if (entries === null) {
    const all = readText(value, context, expected);
    return all === null ? null : { hardware: all, code: all, text: all };
  }
  const of = (name: string) => {
    const found = entries.find(({ key }) => key.trim().toLowerCase() === name)?.value ?? null;
    return context.reader.isNothing(found) ? null : readText(found, context, expected);
  };
  return { hardware: of('hardware'), code: of('code'), text: of('text') };
}

/** Where each of the three stands, as 'licences.code'; nothing for one that stands for all. */
export function placesOfLicences(value: YamlValue, reader: YamlReader): Record<string, TextPlace> {
  const places: Record<string, TextPlace> = {};
  for (const { key, place, value: one } of reader.entriesOf(value) ?? []) {
    const name = key.trim().toLowerCase();
    if (/^(?:hardware|code|text)$/.test(name)) places[`licences.${name}`] = one === null ? place : reader.placeOf(one);
  }
  return places;
}
