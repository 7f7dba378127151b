import type { Words } from './guide.ts';

/** Running text without its marks. */
export function plainWords(words: readonly Words[]): string {
  return words
    .map((node) => {
      if ('children' in node) return plainWords(node.children);
      return node.kind === 'break' ? ' ' : node.value;
    })
    .join('');
}
