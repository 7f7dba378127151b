import { remember } from '#core/remember.ts';
import names from './sectionNames.json';

export type SectionName = 'parts' | 'tools' | 'steps' | 'prose';

const known = new Map<string, SectionName>();
for (const name of ['parts', 'tools', 'steps', 'prose'] as const) {
  for (const words of names[name]) if (!known.has(words)) known.set(words, name);
}
const opening = new RegExp(`^(?:(?:${names.opening.join('|')})\\s+)+`, 'u');
const closing = new RegExp(`(?:\\s+(?:${names.closing.join('|')}))+$`, 'u');
const joins = new RegExp(`\\s+(?:${names.joins.map(escaped).join('|')})\\s+|\\s*[,/&+]\\s*`, 'u');
const ending = new RegExp(`\\s(?:${names.proseEndings.join('|')})$`, 'u');

/** What a heading says of its section by its words alone; null where they say nothing of the sort. */
export const nameOfSection = remember((heading): SectionName | null => {
  const words = withoutNumber(heading)
    .toLowerCase()
    .replaceAll('’', "'")
    .replace(/\([^)]*\)/g, ' ')
    .replace(/[^\p{L}\p{M}\p{N}\s'&/,+-]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  for (const piece of [words, ...words.split(joins)]) {
    const bare = piece.replace(opening, '').replace(closing, '').trim();
    const name = known.get(piece) ?? known.get(bare);
    if (name !== undefined) return name;
  }
  return ending.test(words) ? 'prose' : null;
});

/** A heading without the number that some writers put before it, such as '3.' or 'Step 3:'. */
export function withoutNumber(heading: string): string {
  const rest = heading.replace(
    /^\s*(?:(?:step|part|schritt|étape|paso)\s+\d+|\d+(?:\.\d+)*(?=[.):\s]))\s*[.):–—-]*\s*/iu,
    '',
  );
  return rest === '' ? heading.trim() : rest;
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}
