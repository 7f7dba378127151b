const closers: Readonly<Record<string, string>> = { ')': '(', ']': '[', '}': '{' };
const openers = Object.values(closers);

/** The longest stretch that brackets are expected to hold, so that a stray one hides little. */
const longestStretch = 500;

/**
 * Where a text is inside brackets or backticks, by UTF-16 code unit: 1 inside, 0 outside. A bracket or backtick that
 * is never closed holds nothing.
 */
export function markBracketed(text: string): Uint8Array {
  const inside = new Uint8Array(text.length);
  const edges = new Int32Array(text.length + 1);
  for (const [start, end] of stretches(text)) {
    edges[start] = (edges[start] ?? 0) + 1;
    edges[end] = (edges[end] ?? 0) - 1;
  }
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    depth += edges[i] ?? 0;
    inside[i] = depth > 0 ? 1 : 0;
  }
  return inside;
}

/** Half-open ranges from each opening sign to the closing one. */
function* stretches(text: string): Generator<readonly [start: number, end: number]> {
  const open: { sign: string; at: number }[] = [];
  for (let i = 0; i < text.length; i++) {
    const char = text[i] ?? '';
    if (char === '`') {
      const end = text.slice(i + 1, i + longestStretch).indexOf('`');
      if (end < 0) continue;
      yield [i, i + end + 2];
      i += end + 1;
    } else if (openers.includes(char)) {
      open.push({ sign: char, at: i });
    } else if (closers[char] !== undefined && open.some(({ sign }) => sign === closers[char])) {
      while (open.at(-1)?.sign !== closers[char]) open.pop();
      const start = open.pop()?.at ?? i;
      if (i - start < longestStretch) yield [start, i + 1];
    }
    // What lies too far back can no longer be closed.
    while (open[0] !== undefined && i - open[0].at >= longestStretch) open.shift();
  }
}
