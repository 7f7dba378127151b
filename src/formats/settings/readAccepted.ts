import type { Acceptance } from '#core/settings.ts';
import { readText, readWords, type SettingContext } from './settingValue.ts';
import type { YamlValue } from './yamlRecord.ts';

/** Findings that the maker lives with. An entry without the name of a finding accepts nothing. */
export function readAccepted(value: YamlValue, context: SettingContext): Acceptance[] {
  const items = context.reader.itemsOf(value);
  if (items === null) context.misfit(value, expected);
  return (items ?? []).flatMap((item) => readAcceptance(item, context) ?? []);
}

const expected = "a list of entries with 'finding', 'reason' and 'digests'";

function readAcceptance(item: YamlValue, context: SettingContext): Acceptance | null {
  const entries = context.reader.entriesOf(item);
  const fieldOf = (name: string) => entries?.find(({ key }) => key === name)?.value ?? null;
  const finding = context.reader.textOf(fieldOf('finding'));
  if (finding === null) {
    context.misfit(item, expected);
    return null;
  }
  const optional = (name: string) => (context.reader.isNothing(fieldOf(name)) ? null : fieldOf(name));
  const reason = optional('reason');
  const digests = optional('digests');
  return {
    finding,
    reason: reason === null ? '' : (readText(reason, context) ?? ''),
    digests: digests === null ? [] : readWords(digests, context),
  };
}
