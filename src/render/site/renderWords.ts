import type { LinkTarget, Words } from '#guide/guide.ts';
import { type Child, element } from '../shared/html.ts';
import { fragmentUrl, relativeUrl } from '../shared/safeUrl.ts';
import { filePath } from './renderFiles.ts';
import type { Rendering } from './rendering.ts';

/** Running text. A link that leads nowhere on this page keeps its words. */
export function renderWords(words: readonly Words[], rendering: Rendering): Child[] {
  return words.map((node) => renderNode(node, rendering));
}

function renderNode(node: Words, rendering: Rendering): Child {
  switch (node.kind) {
    case 'text':
      return node.value;
    case 'code':
      return element('code', {}, node.value);
    case 'break':
      return element('br');
    case 'strong':
      return element('strong', {}, ...renderWords(node.children, rendering));
    case 'emphasis':
      return element('em', {}, ...renderWords(node.children, rendering));
    case 'deleted':
      return element('del', {}, ...renderWords(node.children, rendering));
    case 'link': {
      const children = renderWords(node.children, rendering);
      const href = addressOf(node.to, rendering);
      return href === null ? children : element('a', { href }, ...children);
    }
  }
}

function addressOf(to: LinkTarget, rendering: Rendering): string | null {
  switch (to.kind) {
    case 'web':
      return to.url;
    case 'block':
      return rendering.has(to.id) ? fragmentUrl(to.id) : null;
    case 'file':
      return relativeUrl(filePath(to.path));
    case 'unpublished':
      return null;
  }
}
