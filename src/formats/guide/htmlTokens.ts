/** A piece of HTML: a tag with its attributes, or text with character references resolved. */
export type HtmlToken =
  | { readonly kind: 'open' | 'close'; readonly tag: string; readonly attributes: Readonly<Record<string, string>> }
  | { readonly kind: 'text'; readonly value: string };

const piece =
  /<!---?>|<!--[\s\S]*?(?:-->|$)|<[!?][\s\S]*?(?:>|$)|<(\/?)([A-Za-z][A-Za-z0-9-]*)((?:"[^"]*"|'[^']*'|[^'">])*)>|[^<]+|</g;
const attribute = /([^\s"'<>/=]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'=<>`]+)))?/g;
/** Tags whose content is no part of the text. */
export const hidden: ReadonlySet<string> = new Set(['script', 'style', 'template', 'title']);

/** Splits HTML into tags and text. Comments, declarations and the content of hidden tags are dropped. */
export function htmlTokens(html: string): HtmlToken[] {
  const tokens: HtmlToken[] = [];
  let inside: string | null = null;
  for (const match of html.matchAll(piece)) {
    const tag = match[2]?.toLowerCase();
    const closes = match[1] === '/';
    if (inside !== null && !(closes && tag === inside)) continue;
    if (tag === undefined) {
      if (!match[0].startsWith('<!') && !match[0].startsWith('<?')) {
        tokens.push({ kind: 'text', value: decodeReferences(match[0]) });
      }
    } else {
      inside = hidden.has(tag) && !closes ? tag : null;
      tokens.push({ kind: closes ? 'close' : 'open', tag, attributes: attributesOf(match[3] ?? '') });
    }
  }
  return tokens;
}

function attributesOf(text: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const match of text.matchAll(attribute)) {
    found[(match[1] ?? '').toLowerCase()] = decodeReferences(match[2] ?? match[3] ?? match[4] ?? '');
  }
  return found;
}

/** Character references that builders' texts use; others stay as written. */
const named: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: '\u00a0',
  deg: '°',
  micro: 'µ',
  ohm: 'Ω',
  Omega: 'Ω',
  times: '×',
  plusmn: '±',
  ndash: '–',
  mdash: '—',
  rarr: '→',
  harr: '↔',
  hellip: '…',
};

function decodeReferences(text: string): string {
  return text.replace(/&(?:#(\d{1,7})|#[xX]([0-9a-fA-F]{1,6})|([A-Za-z]+));/g, (whole, decimal, hex, name) => {
    if (name !== undefined) return named[name] ?? whole;
    const code = decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal);
    return code === 0 || code > 0x10ffff ? '\ufffd' : String.fromCodePoint(code);
  });
}
