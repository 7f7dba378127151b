/** Lists in a sentence, and what each item names. */
export { type Item, parseItem } from './parseItem.ts';
export { splitItems } from './splitItems.ts';
