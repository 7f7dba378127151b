/** A sentence with its full stop, unless it ends in one, or in a question or exclamation mark. */
export function withStop(words: string): string {
  const trimmed = words.trim();
  return /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
}
