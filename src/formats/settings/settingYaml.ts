import { stringify } from 'yaml';

/** A value as YAML over several lines, each after the first set in by `column` spaces. */
export function blockYaml(value: unknown, column: number, newline: string): string {
  const lines = stringify(value, { lineWidth: 0 }).trimEnd().split('\n');
  return lines.map((line, i) => (i === 0 || line === '' ? line : ' '.repeat(column) + line)).join(newline);
}

/** A value as YAML on one line. */
export function flowYaml(value: unknown): string {
  const options = {
    lineWidth: 0,
    collectionStyle: 'flow',
    blockQuote: false,
    doubleQuotedMinMultiLineLength: 1e9,
  } as const;
  // Inside brackets a comma ends a word, so a word is written as it would be there.
  return stringify([value], options).trimEnd().slice(1, -1).trim();
}
