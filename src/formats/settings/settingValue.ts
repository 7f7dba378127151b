import type { YamlReader, YamlValue } from './yamlRecord.ts';

/** What is needed to read the value of one setting. */
export interface SettingContext {
  readonly reader: YamlReader;
  /** Notes that a value has another form than the setting needs, and which it needs. */
  misfit(value: YamlValue, expected: string): void;
}

/** Words on one line; null, and a misfit, for any other form. */
export function readText(value: YamlValue, context: SettingContext, expected = 'one line of words'): string | null {
  const text = context.reader.textOf(value);
  if (text === null) context.misfit(value, expected);
  return text === null || text.trim() === '' ? null : text.trim();
}

/** A list of words, or a single one. Items of another form are misfits and left out. */
export function readWords(value: YamlValue, context: SettingContext, expected = 'a list of words'): string[] {
  const { reader } = context;
  const items = reader.itemsOf(value) ?? [value];
  return items.filter((item) => !reader.isNothing(item)).flatMap((item) => readText(item, context, expected) ?? []);
}
