import type { Guide } from '#guide/guide.ts';

/** Fields whose text a reader must find on the page, wherever in the tree they stand. */
const shown = new Set([
  'alt',
  'asOf',
  'caption',
  'cause',
  'description',
  'editions',
  'expect',
  'gauge',
  'group',
  'heading',
  'irreversible',
  'length',
  'message',
  'meaning',
  'mistake',
  'mpn',
  'name',
  'named',
  'net',
  'note',
  'optional',
  'package',
  'pin',
  'reading',
  'remedy',
  'revision',
  'right',
  'side',
  'spdx',
  'substitution',
  'symptom',
  'term',
  'supplier',
  'text',
  'title',
  'value',
  'variant',
  'wanted',
  'withheld',
  'words',
  'wrong',
]);

/** Lists of texts that a reader must find. */
const shownLists = new Set(['authors', 'between', 'makes', 'removes']);

/** Every text of a guide that a reader is to see, taken from its JSON without knowledge of blocks. */
export function shownTexts(guide: Guide): string[] {
  return textsIn(JSON.parse(JSON.stringify(guide)));
}

function textsIn(node: unknown): string[] {
  if (Array.isArray(node)) return node.flatMap(textsIn);
  if (typeof node !== 'object' || node === null) return [];
  const fields = Object.entries(node).filter(([key]) => key !== 'places' && key !== 'price');
  const measured =
    fields.some(([key]) => key === 'si') || fields.some(([key, value]) => key === 'between' && isFull(value));
  return fields.flatMap(([key, value]) => {
    if (typeof value === 'string') return shown.has(key) && !(measured && key === 'text') ? [value] : [];
    return shownLists.has(key) && Array.isArray(value) ? value.map(String) : textsIn(value);
  });
}

/** A reading with two points or fewer is drawn from its points and its figure, not from the words it was read from. */
function isFull(between: unknown): boolean {
  return Array.isArray(between) && between.length > 0;
}
