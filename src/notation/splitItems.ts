import { remember } from '#core/remember.ts';
import { markBracketed } from './brackets.ts';

/** One item of a list; `start` and `end` are UTF-16 code units of the whole text. */
export interface ItemText {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/**
 * The items of a list in a sentence, parted at a comma and a space or at a semicolon, but not within brackets or
 * backticks. Blanks around an item do not belong to it; empty items are left out.
 */
export const splitItems = remember((text): readonly ItemText[] => {
  const inside = markBracketed(text);
  const items: ItemText[] = [];
  let start = 0;
  for (let i = 0; i <= text.length; i++) {
    if (i < text.length && (inside[i] === 1 || !parts(text, i))) continue;
    const raw = text.slice(start, i);
    const item = raw.trim();
    const from = start + raw.length - raw.trimStart().length;
    if (item !== '') items.push({ text: item, start: from, end: from + item.length });
    start = i + 1;
  }
  return items;
});

function parts(text: string, at: number): boolean {
  if (text[at] === ';') return true;
  return text[at] === ',' && (at + 1 === text.length || /\s/u.test(text[at + 1] ?? ''));
}
