import type { BlockContent, DefinitionContent, Html, ListItem as ListItemNode, RootContent, Table } from 'mdast';
import type { TextPlace } from '#core/place.ts';
import { placeOf } from '#core/sourceText.ts';
import type { Block, Inline, ListItem } from '#core/text.ts';
import { foldTags, type Loose } from './foldTags.ts';
import { htmlTokens } from './htmlTokens.ts';
import { inlinesFromTree, looseFromHtml, type TreeContext } from './inlinesFromTree.ts';
import { spanOfNode } from './parseMarkdown.ts';

type BlockNode = RootContent | BlockContent | DefinitionContent;

/** Blocks of a Markdown tree. Link definitions, comments and empty markup give none. */
export function blocksFromTree(node: BlockNode, context: TreeContext): Block[] {
  const place = placeOf(context.source, spanOfNode(node, context.shift));
  switch (node.type) {
    case 'paragraph': {
      const children = inlinesFromTree(node.children, context);
      return isBlank(children) ? [] : [{ kind: 'paragraph', children, place }];
    }
    case 'heading':
      return [{ kind: 'heading', depth: node.depth, children: inlinesFromTree(node.children, context), place }];
    case 'list': {
      const items = node.children.map((item) => itemFromTree(item, context));
      return [{ kind: 'list', ordered: node.ordered ?? false, start: node.start ?? 1, items, place }];
    }
    case 'code':
      return [{ kind: 'code', language: node.lang ?? null, value: node.value, place }];
    case 'blockquote':
      return [{ kind: 'quote', blocks: node.children.flatMap((child) => blocksFromTree(child, context)), place }];
    case 'table':
      return [tableFromTree(node, place, context)];
    case 'thematicBreak':
      return [{ kind: 'rule', place }];
    case 'html':
      return blocksFromHtml(node, place, context);
    case 'footnoteDefinition': {
      const blocks = node.children.flatMap((child) => blocksFromTree(child, context));
      return withMark(`[${node.label ?? node.identifier}] `, blocks, place);
    }
    default:
      return [];
  }
}

function itemFromTree(item: ListItemNode, context: TreeContext): ListItem {
  return {
    blocks: item.children.flatMap((child) => blocksFromTree(child, context)),
    ticked: item.checked ?? null,
  };
}

function tableFromTree(node: Table, place: TextPlace, context: TreeContext): Block {
  const [header = [], ...rows] = node.children.map((row) =>
    row.children.map((cell) => inlinesFromTree(cell.children, context)),
  );
  return { kind: 'table', align: (node.align ?? []).map((align) => align ?? null), header, rows, place };
}

/** A footnote's text begins with the mark that the text refers to it by. */
function withMark(mark: string, blocks: readonly Block[], place: TextPlace): Block[] {
  const [first, ...rest] = blocks;
  const text: Inline = { kind: 'text', value: mark };
  if (first?.kind === 'paragraph') return [{ ...first, children: [text, ...first.children] }, ...rest];
  return [{ kind: 'paragraph', children: [text], place }, ...blocks];
}

const breaksText = new Set(
  'address article aside blockquote center dd details div dl dt figcaption figure footer form h1 h2 h3 h4 h5 h6 header hr li main nav ol p pre section summary table tbody td tfoot th thead tr ul'.split(
    ' ',
  ),
);

/** HTML in a block of its own: each run of text between block tags is a paragraph, or a heading. */
function blocksFromHtml(node: Html, place: TextPlace, context: TreeContext): Block[] {
  const blocks: Block[] = [];
  let run: Loose[] = [];
  let depth = 0;
  const flush = () => {
    const children = trimmed(foldTags(run));
    run = [];
    if (isBlank(children)) return;
    blocks.push(depth > 0 ? { kind: 'heading', depth, children, place } : { kind: 'paragraph', children, place });
  };
  for (const token of htmlTokens(node.value)) {
    if (token.kind === 'text' || !breaksText.has(token.tag)) {
      run.push(...looseFromHtml(token, place.span, context));
      continue;
    }
    flush();
    const heading = /^h([1-6])$/.exec(token.tag);
    if (heading !== null) depth = token.kind === 'open' ? Number(heading[1]) : 0;
    if (token.tag === 'hr') blocks.push({ kind: 'rule', place });
  }
  flush();
  return blocks;
}

function isBlank(children: readonly Inline[]): boolean {
  return children.every((child) => child.kind === 'break' || (child.kind === 'text' && child.value.trim() === ''));
}

/** HTML shows no blanks at the ends of a block. */
function trimmed(children: readonly Inline[]): Inline[] {
  return children.map((child, index) => {
    if (child.kind !== 'text') return child;
    let value = child.value;
    if (index === 0) value = value.trimStart();
    if (index === children.length - 1) value = value.trimEnd();
    return { kind: 'text', value };
  });
}
