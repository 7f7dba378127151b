import type { Definition, FootnoteDefinition, Nodes, Root } from 'mdast';

/** What is defined anywhere in a text that is parsed chunk by chunk. */
export interface Defined {
  /** Link definitions by normalised label. */
  readonly links: ReadonlyMap<string, Definition>;
  /** For each label, footnotes with a `^` before it: the chunk that defines it, and Markdown that does the same. */
  readonly sources: ReadonlyMap<string, { readonly chunk: number; readonly markdown: string }>;
}

/** Link labels match without regard to case and blanks (CommonMark 4.7). */
export function normalisedLabel(label: string): string {
  return label
    .trim()
    .replace(/[\t\n\r ]+/g, ' ')
    .toLowerCase()
    .toUpperCase();
}

/** The definitions of a text, since a chunk parsed alone does not know those of the others. The first of a label counts. */
export function collectDefinitions(
  roots: readonly (Root | null)[],
  chunks: readonly { readonly markdown: string }[],
): Defined {
  const links = new Map<string, Definition>();
  const sources = new Map<string, { chunk: number; markdown: string }>();
  for (const [chunk, root] of roots.entries()) {
    for (const node of root === null ? [] : definitionsIn(root)) {
      const isLink = node.type === 'definition';
      const label = normalisedLabel(`${isLink ? '' : '^'}${node.label ?? ''}`);
      if (sources.has(label)) continue;
      if (isLink) links.set(label, node);
      const written = chunks[chunk]?.markdown.slice(node.position?.start.offset, node.position?.end.offset) ?? '';
      sources.set(label, { chunk, markdown: isLink ? unquoted(written) : `[^${node.label}]: .` });
    }
  }
  return { links, sources };
}

/** Definitions of other chunks whose label is spoken of in this one, as Markdown to stand before it. */
export function foreignDefinitions(markdown: string, index: number, { sources }: Defined): string {
  if (sources.size === 0 || !markdown.includes('[')) return '';
  const labels = new Set<string>();
  for (const match of markdown.matchAll(/\[((?:[^[\]\\]|\\.)+)\]/gs)) labels.add(normalisedLabel(match[1] ?? ''));
  const wanted = [...labels].flatMap((label) => sources.get(label) ?? []).filter(({ chunk }) => chunk !== index);
  if (wanted.length === 0) return '';
  const lines = wanted.map((source) => `${source.markdown}\n\n`).join('');
  // The comment keeps an indented first line from belonging to a footnote.
  return lines.includes('[^') ? `${lines}<!-- -->\n\n` : lines;
}

function definitionsIn(node: Nodes): (Definition | FootnoteDefinition)[] {
  const own = node.type === 'definition' || node.type === 'footnoteDefinition' ? [node] : [];
  return 'children' in node ? [...own, ...node.children.flatMap(definitionsIn)] : own;
}

/** A definition may run over lines inside a quote or list; the markers of those are not part of it. */
function unquoted(markdown: string): string {
  return markdown.replace(/(\r\n|\r|\n)[ \t>]*/g, '\n');
}
