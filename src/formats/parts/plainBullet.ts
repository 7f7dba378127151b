/** An item of a list without its markup. */
export interface PlainBullet {
  /** Words in bold, each as one name; empty where nothing is. */
  readonly strong: readonly string[];
  /** All words, without emphasis, links and code marks. */
  readonly text: string;
  /** The first address that the item links to. */
  readonly link: string | null;
}

/** Takes the markup off an item; addresses of reference-style links stay unknown. */
export function plainBullet(written: string): PlainBullet {
  const line = written
    .replace(/^\s*(?:[-*+]|\d{1,9}[.)])\s+/, '')
    .replace(/^\[[ xX]\]\s+/, '')
    .replace(/\s+/g, ' ')
    .trim();
  const strong = [...line.matchAll(/(\*\*|__)(?=\S)(.+?\S??)\1/g)].map((match) => withoutMarkup(match[2] ?? ''));
  return { strong: strong.filter((name) => name !== ''), text: withoutMarkup(line), link: linkIn(line) };
}

function linkIn(line: string): string | null {
  const inline = /(?<!!)\[[^\]]*\]\(\s*<?([^)\s>]+)>?[^)]*\)/.exec(line)?.[1];
  const bare = /https?:\/\/[^\s<>)"]+/.exec(line)?.[0];
  return inline ?? bare?.replace(/[.,;:]+$/, '') ?? null;
}

function withoutMarkup(text: string): string {
  return text
    .replace(/!\[[^\]]*\]\([^)]*\)/g, '')
    .replace(/\[\^[^\]]*\]/g, '')
    .replace(/\[([^\]]*)\](?:\([^)]*\)|\[[^\]]*\])/g, '$1')
    .replace(/<(https?:[^>]*)>/g, '$1')
    .replace(/(\*\*|__)(?=\S)(.+?)\1/g, '$2')
    .replace(/(?<![\p{L}\p{N}])([*_])(?=\S)([^*_]+?)\1(?![\p{L}\p{N}])/gu, '$2')
    .replace(/`([^`]*)`/g, '$1')
    .replace(/\\([^\p{L}\p{N}\s])/gu, '$1')
    .replace(/\s+/g, ' ')
    .trim();
}
