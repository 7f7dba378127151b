import type { Path, TextPlace } from './place.ts';

/** A picture that a text shows. `path` is the file meant, whether or not it exists; null when it lies elsewhere on the web. */
export interface PictureRef {
  readonly url: string;
  readonly path: Path | null;
  readonly exists: boolean;
  readonly alt: string;
  readonly title: string | null;
  readonly place: TextPlace;
}

/** Running text as a tree of nodes; no markup strings. */
export type Inline =
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'strong' | 'emphasis' | 'deleted'; readonly children: readonly Inline[] }
  | { readonly kind: 'code'; readonly value: string }
  | { readonly kind: 'link'; readonly url: string; readonly children: readonly Inline[] }
  | { readonly kind: 'picture'; readonly picture: PictureRef }
  | { readonly kind: 'break' };

export interface ListItem {
  readonly blocks: readonly Block[];
  /** Null where the item has no tick box. */
  readonly ticked: boolean | null;
}

/** A block of prose, with the words it was read from. */
export type Block = { readonly place: TextPlace } & (
  | { readonly kind: 'paragraph'; readonly children: readonly Inline[] }
  | { readonly kind: 'heading'; readonly depth: number; readonly children: readonly Inline[] }
  | {
      readonly kind: 'list';
      readonly ordered: boolean;
      readonly start: number;
      readonly items: readonly ListItem[];
    }
  | { readonly kind: 'code'; readonly language: string | null; readonly value: string }
  | { readonly kind: 'quote'; readonly blocks: readonly Block[] }
  | {
      readonly kind: 'table';
      readonly align: readonly ('left' | 'right' | 'center' | null)[];
      readonly header: readonly (readonly Inline[])[];
      readonly rows: readonly (readonly (readonly Inline[])[])[];
    }
  | { readonly kind: 'rule' }
);

/** The words of running text without markup; pictures give their alternative text. */
export function plainText(nodes: readonly Inline[]): string {
  return nodes.map(plainInline).join('');
}

function plainInline(node: Inline): string {
  switch (node.kind) {
    case 'text':
    case 'code':
      return node.value;
    case 'strong':
    case 'emphasis':
    case 'deleted':
    case 'link':
      return plainText(node.children);
    case 'picture':
      return node.picture.alt;
    case 'break':
      return '\n';
  }
}
