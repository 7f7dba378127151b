import type { Nodes } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';

/** Where a Markdown text leads, and the anchors that its headings make, by the rule that hosts of repositories follow. */
export function readText(markdown: string): { links: string[]; anchors: string[] } {
  const links: string[] = [];
  const anchors: string[] = [];
  const visit = (node: Nodes): void => {
    if (node.type === 'link' || node.type === 'image' || node.type === 'definition') links.push(node.url);
    if (node.type === 'heading') anchors.push(anchorOf(wordsOf(node)));
    if ('children' in node) for (const child of node.children) visit(child);
  };
  visit(fromMarkdown(markdown));
  return { links, anchors };
}

function wordsOf(node: Nodes): string {
  if ('children' in node) return node.children.map(wordsOf).join('');
  return 'value' in node ? node.value : '';
}

/** Lower case, without punctuation, blanks as hyphens. */
function anchorOf(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, '')
    .trim()
    .replaceAll(' ', '-');
}
