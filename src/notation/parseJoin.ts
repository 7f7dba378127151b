import type { Endpoint } from '#core/connection.ts';
import { parseEndpoint } from './endpoint.ts';

/** Two ends that are to be connected, in the order written. */
export interface ParsedJoin {
  readonly from: Endpoint;
  readonly to: Endpoint;
}

/** Longer texts are no pair of ends. */
const longest = 200;

/**
 * A pair of ends: `U1.D5 – R1.1`, with an en or em dash, an arrow, a hyphen between spaces, or the word `to`. A `+` or
 * `−` at the end of a pin belongs to it. Null where the text is no pair, or can be parted in two ways.
 */
export function parseJoin(text: string, knownRefs: ReadonlySet<string>): ParsedJoin | null {
  if (text.length > longest) return null;
  const found: ParsedJoin[] = [];
  for (const match of text.matchAll(separator)) {
    const from = parseEndpoint(text.slice(0, match.index), knownRefs);
    const to = parseEndpoint(text.slice(match.index + match[0].length), knownRefs);
    if (from !== null && to !== null) found.push({ from, to });
  }
  return found.length === 1 ? (found[0] ?? null) : null;
}

const separator = /[–—→↔]|-+>|(?<=\s)-(?=\s)|(?<=\s)to(?=\s)/giu;
