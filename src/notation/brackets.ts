const pairs: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' };

/** The longest stretch that one bracket is expected to hold, so that a stray one hides little. */
const longestStretch = 500;

/**
 * Where a text is inside brackets or backticks, by UTF-16 code unit: 1 inside, 0 outside. A bracket or backtick that
 * is never closed holds nothing.
 */
export function markBracketed(text: string): Uint8Array {
  const inside = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const end = endOfStretch(text, i);
    if (end > i) {
      inside.fill(1, i, end + 1);
      i = end;
    }
  }
  return inside;
}

function endOfStretch(text: string, start: number): number {
  const opening = text[start] ?? '';
  if (opening === '`') return closing(text, start, (char) => (char === '`' ? -1 : 0));
  const wanted = pairs[opening];
  if (wanted === undefined) return -1;
  return closing(text, start, (char) => (char === opening ? 1 : char === wanted ? -1 : 0));
}

function closing(text: string, start: number, step: (char: string) => number): number {
  let depth = 1;
  for (let i = start + 1; i < Math.min(text.length, start + longestStretch); i++) {
    depth += step(text[i] ?? '');
    if (depth === 0) return i;
  }
  return -1;
}
