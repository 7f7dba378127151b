import type { PartLink } from '#core/part.ts';

/** The links in a cell, each of the kind that its address shows; `kind` is that of the column where it does not. */
export function linksIn(text: string, columnKind: 'link' | 'datasheet' | 'text'): PartLink[] {
  const urls = [...text.matchAll(/https?:\/\/[^\s<>"|]+|\bwww\.[^\s<>"|]+/gi)].map((match) => withoutTail(match[0]));
  if (urls.length > 0) return urls.map((url) => linkOf(url, columnKind));
  const isAlone = columnKind !== 'text' && /^[^\s]+$/.test(text);
  if (isAlone && /^[\p{L}\p{N}-]+(?:\.[\p{L}\p{N}-]+)+\/\S+$/u.test(text) && !/\.\w{1,5}$/.test(text)) {
    return [linkOf(text, columnKind)];
  }
  // A path in the folder: by itself in a column of links, and with a slash in any other.
  const isPath = columnKind === 'text' ? /^[^\s:]+\/[^\s:/]+\.[A-Za-z\d]{1,6}$/ : /^[^\s:]+\.[A-Za-z\d]{1,6}$/;
  if (!isPath.test(text)) return [];
  return [{ kind: isDatasheet(text) || columnKind === 'datasheet' ? 'datasheet' : 'file', url: text }];
}

function linkOf(written: string, columnKind: 'link' | 'datasheet' | 'text'): PartLink {
  const url = /^https?:/i.test(written) ? written : `https://${written}`;
  if (columnKind === 'datasheet' || isDatasheet(url)) return { kind: 'datasheet', url };
  if (/\.(?:stl|step|stp|3mf|dxf|svg|zip|scad|f3d)(?:[?#]|$)/i.test(url)) return { kind: 'file', url };
  return { kind: columnKind === 'link' || isShop(url) ? 'shop' : 'other', url };
}

function isDatasheet(url: string): boolean {
  return /\.pdf(?:[?#]|$)|data-?sheet/i.test(url);
}

/** Addresses of things for sale have a product, an item or a basket in their path. */
function isShop(url: string): boolean {
  return /\/(?:products?|items?|shop|store|buy|cart|dp|p|itm|artikel|parts?|detail|productdetail)(?:[/?#]|$)|[?&](?:sku|product|item)=/i.test(
    url,
  );
}

/** A full stop or a bracket at the end belongs to the sentence around the address. */
function withoutTail(url: string): string {
  const trimmed = url.replace(/[.,;:!?'*]+$/, '');
  return /\)$/.test(trimmed) && !trimmed.includes('(') ? trimmed.replace(/\)+$/, '') : trimmed;
}
