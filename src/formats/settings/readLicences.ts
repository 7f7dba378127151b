import type { Settings } from '#core/settings.ts';
import { readText, type SettingContext } from './settingValue.ts';
import type { YamlValue } from './yamlRecord.ts';

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
