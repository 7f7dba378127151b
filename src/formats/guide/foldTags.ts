import { type Inline, plainText } from '#core/text.ts';
import { hidden } from './htmlTokens.ts';

/** Running text before its HTML tags are matched up. */
export type Loose =
  | Inline
  | { readonly kind: 'open'; readonly tag: string; readonly url: string | null }
  | { readonly kind: 'close'; readonly tag: string };

interface Frame {
  readonly tag: string;
  readonly url: string | null;
  readonly children: Inline[];
}

/** Matches opening and closing tags. A tag that never closes, closes nothing or means nothing leaves its text. */
export function foldTags(nodes: readonly Loose[]): Inline[] {
  const done: Inline[] = [];
  const frames: Frame[] = [];
  const add = (...inlines: Inline[]) => (frames.at(-1)?.children ?? done).push(...inlines);
  for (const node of nodes) {
    if (node.kind === 'open') frames.push({ tag: node.tag, url: node.url, children: [] });
    else if (node.kind !== 'close') add(node);
    else if (frames.some(({ tag }) => tag === node.tag)) {
      for (let frame = frames.pop(); frame !== undefined; frame = frames.pop()) {
        const closed = frame.tag === node.tag;
        add(...(closed ? meaningOf(frame) : frame.children));
        if (closed) break;
      }
    }
  }
  for (let frame = frames.pop(); frame !== undefined; frame = frames.pop()) add(...frame.children);
  return joinedText(done);
}

function meaningOf({ tag, url, children }: Frame): Inline[] {
  if (hidden.has(tag)) return [];
  switch (tag) {
    case 'a':
      return url === null ? children : [{ kind: 'link', url, children }];
    case 'b':
    case 'strong':
      return [{ kind: 'strong', children }];
    case 'i':
    case 'em':
      return [{ kind: 'emphasis', children }];
    case 'del':
    case 's':
    case 'strike':
      return [{ kind: 'deleted', children }];
    case 'code':
    case 'kbd':
    case 'samp':
    case 'tt':
      return [{ kind: 'code', value: plainText(children) }];
    default:
      return children;
  }
}

/** Neighbouring texts as one, so that a word split by a dropped tag is whole again. */
function joinedText(nodes: readonly Inline[]): Inline[] {
  const joined: Inline[] = [];
  for (const node of nodes) {
    const last = joined.at(-1);
    if (node.kind === 'text' && last?.kind === 'text') {
      joined[joined.length - 1] = { kind: 'text', value: last.value + node.value };
    } else if ('children' in node) joined.push({ ...node, children: joinedText(node.children) });
    else joined.push(node);
  }
  return joined;
}
