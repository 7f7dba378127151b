import type { Definition, Nodes, Root, RootContent } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';
import type { Span } from '#core/place.ts';
import { remember } from '#core/remember.ts';
import { chunksOf } from './chunksOf.ts';
import { collectDefinitions, foreignDefinitions } from './linkDefinitions.ts';
import { maskSiteMarkup } from './maskSiteMarkup.ts';

/** A top-level node of a Markdown text; offsets of its positions count from `shift`. */
export interface ParsedNode {
  readonly node: RootContent;
  readonly shift: number;
}

export interface ParsedMarkdown {
  readonly nodes: readonly ParsedNode[];
  /** Link definitions by normalised label. The first of a label counts. */
  readonly definitions: ReadonlyMap<string, Definition>;
}

/** Parses CommonMark with GFM from offset `from` on, heading by heading. Never throws. */
export function parseMarkdown(text: string, from = 0): ParsedMarkdown {
  const masked = maskSiteMarkup(text);
  const chunks = chunksOf(masked.slice(from)).map(({ start, end }) => ({
    start: start + from,
    markdown: masked.slice(start + from, end + from),
  }));
  // What has no `]:` in it defines nothing, and need not be parsed before the definitions are known.
  const early = chunks.map(({ markdown }) => (markdown.includes(']:') ? parseChunk(markdown) : null));
  const defined = collectDefinitions(early, chunks);
  const nodes = chunks.flatMap(({ start, markdown }, index): ParsedNode[] => {
    const foreign = foreignDefinitions(markdown, index, defined);
    const root = foreign === '' ? (early[index] ?? parseChunk(markdown)) : parseChunk(foreign + readable(markdown));
    return root.children
      .filter((node) => (node.position?.start.offset ?? 0) >= foreign.length)
      .map((node) => ({ node, shift: start - foreign.length }));
  });
  return { nodes, definitions: defined.links };
}

/** The span of a node in the text that it was parsed from. */
export function spanOfNode(node: Nodes, shift: number): Span {
  return [(node.position?.start.offset ?? 0) + shift, (node.position?.end.offset ?? 0) + shift];
}

const githubFlavoured = { extensions: [gfm()], mdastExtensions: [gfmFromMarkdown()] };

/** A section that was parsed before is not parsed again. */
const parseReadable = remember((markdown): Root => fromMarkdown(markdown, githubFlavoured), 2000);

function parseChunk(markdown: string): Root {
  return parseReadable(readable(markdown));
}

/** The parser drops a byte order mark at the head of what it gets, and offsets with it. */
function readable(markdown: string): string {
  return markdown.startsWith('\ufeff') ? ` ${markdown.slice(1)}` : markdown;
}
