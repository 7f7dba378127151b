import { DOMParser, type Element, type Node } from '@xmldom/xmldom';

/** A page as a strict reader of XML takes it in: whatever is not well formed throws. */
export interface Page {
  readonly root: Element;
  readonly elements: readonly Element[];
  /** Text and alternative texts, white space squeezed. */
  readonly words: string;
  named(...names: string[]): Element[];
  byId(id: string): Element | undefined;
}

export function readPage(html: string): Page {
  const root = new DOMParser({ onError: fail }).parseFromString(html, 'text/xml').documentElement;
  if (root === null) throw new Error('the page is empty');
  const elements = [root, ...root.getElementsByTagName('*')];
  const words = [textIn(root), ...elements.map((one) => one.getAttribute('alt') ?? '')];
  return {
    root,
    elements,
    words: squeezed(words.join(' ')),
    named: (...names) => elements.filter((one) => names.includes(one.nodeName)),
    byId: (id) => elements.find((one) => one.getAttribute('id') === id),
  };
}

/** What a reader sees: scripts and data for programs left out. */
function textIn(node: Node): string {
  if (node.nodeName === 'script') return '';
  if (node.nodeType === 3) return node.nodeValue ?? '';
  return [...node.childNodes].map(textIn).join('');
}

export function squeezed(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

function fail(level: string, message: string): never {
  throw new Error(`${level}: ${message}`);
}
