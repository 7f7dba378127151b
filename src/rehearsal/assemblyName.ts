import { parseItem } from '#notation/items.ts';

/** A name of a sub-assembly as it is compared, without article and amount: 'The lamp head × 2' and 'lamp  head' are one. */
export function assemblyName(written: string): string {
  return parseItem(written)
    .name.toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
    .replace(/^(?:the|a|an|your) /, '');
}
