import type { Path } from '#core/place.ts';
import type { Shot } from '#core/shot.ts';
import type { ShotChoice } from '#core/shotChoice.ts';
import { type SignalWord, signalWords } from '#core/step.ts';
import { type Block, type Inline, type PictureRef, plainText } from '#core/text.ts';
import type { BlockNames } from './blockNames.ts';
import { composePicture } from './composePicture.ts';
import type { BlockId, BodyBlock, Words } from './guide.ts';
import { type LinkTargets, resolveLink } from './links.ts';

/** What the maker's text is composed with. */
export interface Drafting {
  readonly names: BlockNames;
  readonly shots: ReadonlyMap<Path, Shot>;
  /** What the maker decided about a shot, by its path. */
  readonly choices: ReadonlyMap<Path, ShotChoice>;
  readonly targets: LinkTargets;
}

/** Whose text it is: the block it stands in, and what to call a picture that nobody described. */
export interface Within {
  readonly parent: BlockId;
  readonly pictureOf: string;
}

/** The maker's blocks as blocks of the guide: pictures lifted out of lines, links resolved. */
export function composeBody(blocks: readonly Block[], within: Within, drafting: Drafting): BodyBlock[] {
  return blocks.flatMap((block) => composeBlock(block, within, drafting));
}

function composeBlock(block: Block, within: Within, drafting: Drafting): BodyBlock[] {
  const told = (kind: string, content: unknown) => ({
    id: drafting.names.within(within.parent, kind, content),
    places: [block.place],
  });
  const words = (nodes: readonly Inline[]) => composeWords(nodes, block.place.file, drafting.targets);
  const pictures = (nodes: readonly Inline[]) =>
    picturesIn(nodes).map((ref) => composeInlinePicture(ref, within, drafting));
  switch (block.kind) {
    case 'paragraph':
      return paragraphRuns(block.children).map(
        (run): BodyBlock =>
          run.kind === 'picture'
            ? composeInlinePicture(run.picture, within, drafting)
            : { kind: 'paragraph', ...told('text', plainText(run.nodes)), words: words(run.nodes) },
      );
    case 'heading':
      return [
        { kind: 'heading', ...told('heading', plainText(block.children)), words: words(block.children) },
        ...pictures(block.children),
      ];
    case 'list':
      return [
        {
          kind: 'list',
          ...told('list', block.place.quote),
          ordered: block.ordered,
          start: block.start,
          items: block.items.map((item) => ({
            done: item.ticked,
            body: composeBody(item.blocks, within, drafting),
          })),
        },
      ];
    case 'code':
      return [{ kind: 'listing', ...told('listing', block.value), language: block.language, text: block.value }];
    case 'quote': {
      const caution = cautionIn(block.blocks);
      if (caution) return [{ kind: 'caution', ...told('caution', caution), ...caution }];
      return [
        { kind: 'quote', ...told('quote', block.place.quote), body: composeBody(block.blocks, within, drafting) },
      ];
    }
    case 'table':
      return [
        {
          kind: 'table',
          ...told('table', block.place.quote),
          align: block.align,
          header: block.header.map(words),
          rows: block.rows.map((row) => row.map(words)),
        },
        ...[block.header, ...block.rows].flat().flatMap(pictures),
      ];
    case 'rule':
      return [{ kind: 'rule', ...told('rule', '') }];
  }
}

function composeInlinePicture(ref: PictureRef, within: Within, drafting: Drafting) {
  return composePicture(ref, {
    parent: within.parent,
    names: drafting.names,
    shot: ref.path === null ? undefined : drafting.shots.get(ref.path),
    choice: ref.path === null ? undefined : drafting.choices.get(ref.path),
    instead: within.pictureOf,
  });
}

type Run =
  | { readonly kind: 'words'; readonly nodes: Inline[] }
  | { readonly kind: 'picture'; readonly picture: PictureRef };

/**
 * A paragraph as runs of words and pictures. A picture that begins a line parts the text there; one amid a
 * sentence follows the whole text, so that the sentence stays together.
 */
function paragraphRuns(children: readonly Inline[]): Run[] {
  const runs: Run[] = [];
  let nodes: Inline[] = [];
  let amid: PictureRef[] = [];
  function flush() {
    if (plainText(nodes).trim() !== '') runs.push({ kind: 'words', nodes: trimmed(nodes) });
    for (const picture of amid) runs.push({ kind: 'picture', picture });
    nodes = [];
    amid = [];
  }
  for (const child of children) {
    nodes.push(...withoutPictures([child]));
    const pictures = picturesIn([child]);
    const beginsLine = /(^|\n)[ \t]*$/.test(plainText(nodes));
    if (pictures.length > 0 && beginsLine) flush();
    for (const picture of pictures) {
      if (beginsLine) runs.push({ kind: 'picture', picture });
      else amid.push(picture);
    }
  }
  flush();
  return runs;
}

/** Line ends at the edges of a run come from the picture beside it. */
function trimmed(nodes: readonly Inline[]): Inline[] {
  let from = 0;
  let to = nodes.length;
  while (from < to && isBlank(nodes[from])) from++;
  while (to > from && isBlank(nodes[to - 1])) to--;
  return nodes.slice(from, to).map((node, i, all) => {
    if (node.kind !== 'text') return node;
    const start = i === 0 ? node.value.trimStart() : node.value;
    return { kind: 'text', value: i === all.length - 1 ? start.trimEnd() : start };
  });
}

function isBlank(node: Inline | undefined): boolean {
  return node !== undefined && plainText([node]).trim() === '';
}

function picturesIn(nodes: readonly Inline[]): PictureRef[] {
  return nodes.flatMap((node) => {
    if (node.kind === 'picture') return [node.picture];
    return 'children' in node ? picturesIn(node.children) : [];
  });
}

/** The same nodes less their pictures, and less the links and emphases that held nothing else. */
function withoutPictures(nodes: readonly Inline[]): Inline[] {
  return nodes.flatMap((node): Inline[] => {
    if (node.kind === 'picture') return [];
    if (!('children' in node)) return [node];
    const children = withoutPictures(node.children);
    return children.length > 0 ? [{ ...node, children }] : [];
  });
}

function composeWords(nodes: readonly Inline[], file: Path, targets: LinkTargets): Words[] {
  return nodes.flatMap((node) => composeNode(node, file, targets));
}

function composeNode(node: Inline, file: Path, targets: LinkTargets): Words[] {
  switch (node.kind) {
    case 'text':
    case 'code':
    case 'break':
      return [node];
    case 'strong':
    case 'emphasis':
    case 'deleted':
      return [{ kind: node.kind, children: composeWords(node.children, file, targets) }];
    case 'link': {
      const children = composeWords(node.children, file, targets);
      const to = resolveLink(node.url, file, targets);
      return to && children.length > 0 ? [{ kind: 'link', to, children }] : children;
    }
    case 'picture':
      return [];
  }
}

/** A quotation that opens with a signal word is a caution in the middle of the text. */
function cautionIn(blocks: readonly Block[]): { word: SignalWord; message: string } | null {
  const text = blocks.map((block) => (block.kind === 'paragraph' ? plainText(block.children) : null));
  if (text.includes(null)) return null;
  const match = /^\s*(\p{L}+)\s*[:.–—-]\s*(.+)$/su.exec(text.join('\n'));
  const word = signalWords.find((candidate) => candidate === match?.[1]?.toLowerCase());
  return word && match?.[2] ? { word, message: match[2].replace(/\s+/g, ' ').trim() } : null;
}
