import { type FactLabel, factLabels } from '#core/step.ts';
import words from './factLabels.json';

/** A label found at the head of a list item: which one, and how many characters it takes with its colon. */
export interface LabelFound {
  readonly label: FactLabel;
  readonly length: number;
}

const word = "[\\p{L}\\p{M}][\\p{L}\\p{M}' -]{0,30}?";
const mark = '(\\*\\*|__|\\*|_|`)';
const forms = [
  new RegExp(`^${mark}(?<word>${word})\\s*[:：]\\s*\\1\\s*`, 'u'),
  new RegExp(`^${mark}(?<word>${word})\\s*\\1\\s*[:：]\\s*`, 'u'),
  new RegExp(`^(?<word>${word})\\s*[:：]\\s*`, 'u'),
];
const labelOfWord = new Map<string, FactLabel>();
for (const label of factLabels) labelOfWord.set(label, label);
for (const language of [words.en, words.de, words.fr, words.es]) {
  for (const label of factLabels) {
    for (const written of (language as Partial<Record<FactLabel, string[]>>)[label] ?? []) {
      if (!labelOfWord.has(written)) labelOfWord.set(written, label);
    }
  }
}

/** The label that a line opens with, whatever its case, bold type or language; null where there is none. */
export function factLabelOf(line: string): LabelFound | null {
  for (const form of forms) {
    const match = form.exec(line);
    const label = labelOfWord.get(match?.groups?.word?.normalize('NFC').toLowerCase() ?? '');
    if (match !== null && label !== undefined) return { label, length: match[0].length };
  }
  return null;
}
