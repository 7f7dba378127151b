/** True where every word of `asked` begins some word of `text`, whatever the case and the accents. */
export function matches(text: string, asked: string): boolean {
  const words = wordsOf(text);
  return wordsOf(asked).every((start) => words.some((word) => word.startsWith(start)));
}

function wordsOf(text: string): string[] {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}
