/** What a reader of a page gets: its words, pictures, links and code. */
export interface Seen {
  readonly words: string;
  readonly pictures: readonly { readonly url: string; readonly alt: string }[];
  readonly links: readonly { readonly url: string; readonly words: string }[];
  readonly code: readonly string[];
}

const partsText = /^(?:p|h[1-6]|[ou]l|li|blockquote|pre|br|hr|div|table|t[drh]|del|ins)$/;
const unseen = /<(script|style)\b[\s\S]*?(?:<\/\1>|$)/gi;

/** Reads HTML as the specification writes it, by tags alone; shares nothing with the product. */
export function readHtml(html: string): Seen {
  const pictures: { url: string; alt: string }[] = [];
  const links: { url: string; words: string }[] = [];
  const code: string[] = [];
  const open: { tag: string; url: string; from: number }[] = [];
  let words = '';
  for (const [, comment, closing, tag = '', attributes = '', text = ''] of html
    .replace(unseen, ' ')
    .matchAll(
      /(<!---?>|<!--[\s\S]*?-->|<[?!][\s\S]*?>)|<(\/?)([A-Za-z][\w-]*)((?:"[^"]*"|'[^']*'|[^'">])*)>|([^<]+|<)/g,
    )) {
    if (comment !== undefined) continue;
    if (tag === '') {
      words += unescaped(text);
      continue;
    }
    const name = tag.toLowerCase();
    if (partsText.test(name)) words += ' ';
    if (name === 'img') pictures.push({ url: attribute(attributes, 'src'), alt: attribute(attributes, 'alt') });
    else if (closing !== '/') open.push({ tag: name, url: attribute(attributes, 'href'), from: words.length });
    else {
      const at = open.findLastIndex((frame) => frame.tag === name);
      const frame = open[at];
      if (frame === undefined) continue;
      open.length = at;
      const inner = words.slice(frame.from);
      if (name === 'a') links.push({ url: frame.url, words: oneLine(inner) });
      if (name === 'code') code.push(oneLine(inner));
    }
  }
  return { words: oneLine(words), pictures, links, code };
}

export function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

function attribute(attributes: string, name: string): string {
  const match = new RegExp(`${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)'|([^\\s"'>]+))`, 'i').exec(attributes);
  return unescaped(match?.[1] ?? match?.[2] ?? match?.[3] ?? '');
}

function unescaped(text: string): string {
  return text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');
}
