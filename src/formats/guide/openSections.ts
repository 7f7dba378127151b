import type { List } from 'mdast';
import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { type Block, type PictureRef, plainText } from '#core/text.ts';
import { blocksFromTree } from './blocksFromTree.ts';
import { type ParsedNode, parseMarkdown, spanOfNode } from './parseMarkdown.ts';
import { picturesOf } from './picturesOf.ts';
import type { PictureFolders } from './resolvePicture.ts';

/** A heading and what follows it up to the next one, before its role is known. */
export interface OpenedSection {
  readonly source: SourceText;
  readonly heading: string;
  /** 0 for text before any heading. */
  readonly depth: number;
  /** The heading's words; empty at the start of the text where there is none. */
  readonly words: Span;
  readonly headingPictures: readonly PictureRef[];
  /** From the end of the heading to the next one. */
  readonly content: Span;
  readonly blocks: readonly Block[];
  /** The first list at the top level, as parsed, and its index among `blocks`. */
  readonly firstList: { readonly node: List; readonly shift: number; readonly at: number } | null;
}

/** Reads a text from offset `from` on as sections. Text before the first heading is a section where there is any. */
export function openSections(source: SourceText, from: number, folders: PictureFolders): OpenedSection[] {
  const { nodes, definitions } = parseMarkdown(source.text, from);
  const sections: Draft[] = [
    { heading: '', depth: 0, words: [from, from], headingPictures: [], start: from, blocks: [], firstList: null },
  ];
  for (const parsed of nodes) {
    const blocks = blocksFromTree(parsed.node, { source, shift: parsed.shift, definitions, folders });
    for (const block of blocks) {
      if (block.kind === 'heading') sections.push(draftFrom(block, parsed, source));
      else addBlock(sections.at(-1), block, parsed);
    }
  }
  return sections
    .map((draft, index) => ({ draft, next: sections[index + 1] }))
    .filter(({ draft }) => draft.depth > 0 || draft.blocks.length > 0)
    .map(({ draft, next }) => {
      const end = next === undefined ? source.text.length : (next.headingStart ?? next.start);
      return {
        source,
        heading: draft.heading,
        depth: draft.depth,
        words: draft.words,
        headingPictures: draft.headingPictures,
        content: [draft.start, Math.max(draft.start, end)],
        blocks: draft.blocks,
        firstList: draft.firstList,
      };
    });
}

interface Draft {
  readonly heading: string;
  readonly depth: number;
  readonly words: Span;
  readonly headingPictures: readonly PictureRef[];
  readonly headingStart?: number;
  readonly start: number;
  readonly blocks: Block[];
  firstList: OpenedSection['firstList'];
}

type HeadingBlock = Extract<Block, { kind: 'heading' }>;

function draftFrom(block: HeadingBlock, { node, shift }: ParsedNode, source: SourceText): Draft {
  const [headingStart, start] = block.place.span;
  const words = wordsOfHeading(node, shift, block.place.span, source);
  const heading = plainText(block.children).replace(/\s+/g, ' ').trim();
  const headingPictures = picturesOf([block]);
  return { heading, depth: block.depth, words, headingPictures, headingStart, start, blocks: [], firstList: null };
}

/** The heading without its markers and without the attributes that a site generator allows after it. */
function wordsOfHeading(node: ParsedNode['node'], shift: number, whole: Span, source: SourceText): Span {
  const first = 'children' in node ? node.children[0] : undefined;
  const last = 'children' in node ? node.children.at(-1) : undefined;
  if (node.type !== 'heading' || first === undefined || last === undefined) return whole;
  const start = spanOfNode(first, shift)[0];
  const text = source.text.slice(start, spanOfNode(last, shift)[1]).replace(/\s*\{[:#.][^{}]*\}\s*$/, '');
  return [start, start + text.trimEnd().length];
}

function addBlock(section: Draft | undefined, block: Block, { node, shift }: ParsedNode): void {
  if (section === undefined) return;
  if (node.type === 'list' && section.firstList === null)
    section.firstList = { node, shift, at: section.blocks.length };
  section.blocks.push(block);
}
