/** A node of a source file's syntax tree, as a grammar delivers it. Offsets are UTF-16 code units. */
export interface SyntaxNode {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** True where the grammar could not make sense of the text. */
  readonly isError: boolean;
  readonly children: readonly SyntaxNode[];
  /** The child under a field name of the grammar, such as `declarator`; null where there is none. */
  field(name: string): SyntaxNode | null;
}
