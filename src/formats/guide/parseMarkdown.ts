import type { Definition, Nodes, Root, RootContent } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';
import type { Span } from '#core/place.ts';
import { chunksOf } from './chunksOf.ts';
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
  const chunks = chunksOf(masked.slice(from)).map(({ start, end }) => ({ start: start + from, end: end + from }));
  const roots = chunks.map(({ start, end }) => parseChunk(masked.slice(start, end), ''));
  const found = collectDefinitions(roots, chunks, masked);
  const nodes = chunks.flatMap(({ start, end }, index): ParsedNode[] => {
    const chunk = masked.slice(start, end);
    const foreign = foreignDefinitions(chunk, index, found.sources);
    const root = foreign === '' ? roots[index] : parseChunk(chunk, foreign);
    return (root?.children ?? [])
      .filter((node) => (node.position?.start.offset ?? 0) >= foreign.length)
      .map((node) => ({ node, shift: start - foreign.length }));
  });
  return { nodes, definitions: found.definitions };
}

/** The span of a node in the text that it was parsed from. */
export function spanOfNode(node: Nodes, shift: number): Span {
  return [(node.position?.start.offset ?? 0) + shift, (node.position?.end.offset ?? 0) + shift];
}

/** Link labels match without regard to case and blanks (CommonMark 4.7). */
export function normalisedLabel(label: string): string {
  return label
    .trim()
    .replace(/[\t\n\r ]+/g, ' ')
    .toLowerCase()
    .toUpperCase();
}

function parseChunk(chunk: string, foreign: string): Root {
  // The parser drops a byte order mark at the head of what it gets, and offsets with it.
  const readable = chunk.startsWith('\ufeff') ? ` ${chunk.slice(1)}` : chunk;
  return fromMarkdown(foreign + readable, {
    extensions: [gfm()],
    mdastExtensions: [gfmFromMarkdown()],
  });
}

interface DefinitionSource {
  readonly chunk: number;
  readonly markdown: string;
}

/** Definitions of the whole text, since a chunk parsed alone does not know those of the others. */
function collectDefinitions(roots: readonly Root[], chunks: readonly { start: number; end: number }[], text: string) {
  const definitions = new Map<string, Definition>();
  const sources = new Map<string, DefinitionSource>();
  for (const [index, root] of roots.entries()) {
    const shift = chunks[index]?.start ?? 0;
    for (const node of definitionsIn(root)) {
      const label = normalisedLabel(node.type === 'definition' ? (node.label ?? '') : `^${node.label ?? ''}`);
      if (sources.has(label)) continue;
      if (node.type === 'definition') definitions.set(label, node);
      const written = node.type === 'definition' ? text.slice(...spanOfNode(node, shift)) : `[^${node.label}]: .`;
      sources.set(label, { chunk: index, markdown: unquoted(written) });
    }
  }
  return { definitions, sources };
}

function definitionsIn(node: Nodes): Extract<Nodes, { type: 'definition' | 'footnoteDefinition' }>[] {
  const own = node.type === 'definition' || node.type === 'footnoteDefinition' ? [node] : [];
  return 'children' in node ? [...own, ...node.children.flatMap(definitionsIn)] : own;
}

/** A definition may run over lines inside a quote or list; the markers of those are not part of it. */
function unquoted(markdown: string): string {
  return markdown.replace(/(\r\n|\r|\n)[ \t>]*/g, '\n');
}

/** Definitions of other chunks whose label is spoken of in this one, as Markdown to stand before it. */
function foreignDefinitions(chunk: string, index: number, sources: ReadonlyMap<string, DefinitionSource>): string {
  if (sources.size === 0 || !chunk.includes('[')) return '';
  const labels = new Set<string>();
  for (const match of chunk.matchAll(/\[((?:[^[\]\\]|\\.)+)\]/gs)) labels.add(normalisedLabel(match[1] ?? ''));
  const wanted = [...labels].flatMap((label) => sources.get(label) ?? []).filter(({ chunk: from }) => from !== index);
  if (wanted.length === 0) return '';
  // The comment keeps an indented first line from belonging to a footnote.
  return `${wanted.map(({ markdown }) => markdown).join('\n\n')}\n\n<!-- -->\n\n`;
}
