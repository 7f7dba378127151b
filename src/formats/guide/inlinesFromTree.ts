import type { Definition, Image, ImageReference, PhrasingContent } from 'mdast';
import type { Span } from '#core/place.ts';
import { placeOf, type SourceText } from '#core/sourceText.ts';
import type { Inline, PictureRef } from '#core/text.ts';
import { withoutAttributeLists } from './attributeLists.ts';
import { foldTags, type Loose } from './foldTags.ts';
import { type HtmlToken, htmlTokens } from './htmlTokens.ts';
import { normalisedLabel } from './linkDefinitions.ts';
import { unmaskTarget } from './maskSiteMarkup.ts';
import { spanOfNode } from './parseMarkdown.ts';
import { type PictureFolders, resolvePicture } from './resolvePicture.ts';

/** What converting a tree needs to know of the text around it. */
export interface TreeContext {
  readonly source: SourceText;
  readonly shift: number;
  readonly definitions: ReadonlyMap<string, Definition>;
  readonly folders: PictureFolders;
}

/** Running text of a Markdown tree, HTML tags and attribute lists resolved. */
export function inlinesFromTree(nodes: readonly PhrasingContent[], context: TreeContext): Inline[] {
  return withoutAttributeLists(foldTags(nodes.flatMap((node) => looseFromNode(node, context))));
}

/** One piece of HTML within running text or in a block of its own. */
export function looseFromHtml(token: HtmlToken, span: Span, context: TreeContext): Loose[] {
  if (token.kind === 'text') return [{ kind: 'text', value: token.value.replace(/[ \t\r\n]+/g, ' ') }];
  if (token.tag === 'br') return [{ kind: 'break' }];
  if (token.tag === 'img') {
    const { src = '', alt = '', title = null } = token.attributes;
    return token.kind === 'close'
      ? []
      : [{ kind: 'picture', picture: pictureOf({ url: src, alt, title }, span, context) }];
  }
  if (token.kind === 'close') return [{ kind: 'close', tag: token.tag }];
  return [{ kind: 'open', tag: token.tag, url: token.attributes.href ?? null }];
}

function looseFromNode(node: PhrasingContent, context: TreeContext): Loose[] {
  switch (node.type) {
    case 'text':
      return [{ kind: 'text', value: node.value.replace(/[ \t]*(?:\r\n|\r|\n)[ \t]*/g, ' ') }];
    case 'strong':
    case 'emphasis':
      return [{ kind: node.type, children: inlinesFromTree(node.children, context) }];
    case 'delete':
      return [{ kind: 'deleted', children: inlinesFromTree(node.children, context) }];
    case 'inlineCode':
      return [{ kind: 'code', value: node.value.replace(/\r\n|\r|\n/g, ' ') }];
    case 'break':
      return [{ kind: 'break' }];
    case 'link':
      return [{ kind: 'link', url: unmaskTarget(node.url), children: inlinesFromTree(node.children, context) }];
    case 'linkReference': {
      const children = inlinesFromTree(node.children, context);
      const definition = definitionOf(node, context);
      return definition === undefined ? children : [{ kind: 'link', url: unmaskTarget(definition.url), children }];
    }
    case 'image':
    case 'imageReference':
      return [{ kind: 'picture', picture: pictureFromNode(node, context) }];
    case 'html':
      return htmlTokens(node.value).flatMap((token) => looseFromHtml(token, spanOfNode(node, context.shift), context));
    case 'footnoteReference':
      return [{ kind: 'text', value: `[${node.label ?? node.identifier}]` }];
  }
}

function definitionOf(node: { label?: string | null | undefined; identifier: string }, context: TreeContext) {
  return context.definitions.get(normalisedLabel(node.label ?? node.identifier));
}

function pictureFromNode(node: Image | ImageReference, context: TreeContext): PictureRef {
  const target = node.type === 'image' ? node : definitionOf(node, context);
  const written = { url: unmaskTarget(target?.url ?? ''), alt: node.alt ?? '', title: target?.title ?? null };
  return pictureOf(written, spanOfNode(node, context.shift), context);
}

function pictureOf(
  { url, alt, title }: { url: string; alt: string; title: string | null },
  span: Span,
  { source, folders }: TreeContext,
): PictureRef {
  const { path, exists } = resolvePicture(url, source.file, folders);
  return { url, path, exists, alt: alt.replace(/\s+/g, ' ').trim(), title, place: placeOf(source, span) };
}
