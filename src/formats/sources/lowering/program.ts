import type { SourceLanguage } from '#core/code.ts';
import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { SyntaxNode } from '#core/syntax.ts';

/** What an expression says, as far as pins, numbers and texts go. The same for every language. */
export type Value = { readonly span: Span } & (
  | { readonly kind: 'number'; readonly text: string }
  /** A text literal; the span covers its content without the quotes. */
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'name'; readonly path: readonly string[]; readonly written: string }
  | { readonly kind: 'list'; readonly items: readonly Item[] }
  /** An element of a list; `index` null where it is not a literal, so that any may be meant. */
  | { readonly kind: 'element'; readonly of: Value; readonly index: string | null }
  /** A field of something that is not a plain name. */
  | { readonly kind: 'member'; readonly of: Value; readonly name: string }
  | { readonly kind: 'call'; readonly call: Call }
  | { readonly kind: 'either'; readonly options: readonly Value[] }
  /** What a counting loop runs through, both ends included. */
  | { readonly kind: 'range'; readonly from: number; readonly to: number }
  | { readonly kind: 'other' }
);

/** An entry of a list, record, dictionary or argument list; named where the code names it. */
export interface Item {
  readonly name: string | null;
  readonly value: Value;
}

/** A call, or the making of an object. */
export interface Call {
  readonly how: 'call' | 'make';
  /** `['strip', 'begin']`; for an object the name of its class. Subscripts are left out. */
  readonly callee: readonly string[];
  readonly template: readonly Value[];
  readonly args: readonly Item[];
  /** The variable that takes the result or is the object. */
  readonly into: string | null;
  readonly scope: Scope;
  readonly span: Span;
}

/** A name and what it stands for. */
export interface Definition {
  readonly name: string;
  readonly how: 'macro' | 'variable' | 'enumerator' | 'field' | 'parameter' | 'assignment' | 'module' | 'loop';
  readonly value: Value | null;
  /** The name of its class, where the code tells. */
  readonly type: string | null;
  /** Where names in `value` are looked up. */
  readonly scope: Scope;
  /** Whether the code itself may change it. */
  readonly constant: boolean;
  /** The name's own words. */
  readonly span: Span;
  /** For a parameter: the function, and its number from 0. */
  readonly of?: { readonly routine: Routine; readonly index: number };
}

export interface Routine {
  readonly name: string;
  /** The class that a constructor or method belongs to. */
  readonly owner: string | null;
}

/** A stretch of code in which names mean something. */
export interface Scope {
  readonly kind: 'file' | 'class' | 'namespace' | 'routine' | 'block';
  readonly name: string | null;
  readonly parent: Scope | null;
  readonly source: SourceText;
  readonly definitions: Map<string, Definition[]>;
  /** Classes, enumerations and namespaces inside, by name. */
  readonly inner: Map<string, Scope>;
  /** Every scope inside, named or not. */
  readonly children: Scope[];
  /** Functions and methods declared with a body. */
  readonly routines: Set<string>;
}

export interface ImportLine {
  /** `Wire.h`, `machine`, `.pins`. */
  readonly written: string;
  /** Whether an `#include` uses quotes. */
  readonly quoted: boolean;
  readonly span: Span;
}

/** Comments, blocks that are switched off, and stretches that the grammar could not make sense of. */
export interface Unread {
  readonly span: Span;
  readonly why: 'comment' | 'inactive' | 'fault';
}

/** One source file, lowered. */
export interface Program {
  readonly source: SourceText;
  readonly language: SourceLanguage;
  readonly file: Scope;
  readonly calls: readonly Call[];
  readonly imports: readonly ImportLine[];
  /** Modules from which every name is taken. */
  readonly openModules: readonly string[];
  readonly unread: readonly Unread[];
  /** Offset at which the first function body begins; the length of the text where there is none. */
  readonly firstRoutine: number;
}

export function openScope(kind: Scope['kind'], name: string | null, parent: Scope): Scope {
  const scope = makeScope(kind, name, parent, parent.source);
  parent.children.push(scope);
  if (name !== null && kind !== 'routine' && !parent.inner.has(name)) parent.inner.set(name, scope);
  return scope;
}

/** The scope of a whole file. */
export function fileScope(source: SourceText): Scope {
  return makeScope('file', null, null, source);
}

export function define(definition: Definition, into: Scope): void {
  const known = into.definitions.get(definition.name);
  if (known) known.push(definition);
  else into.definitions.set(definition.name, [definition]);
}

/** A definition at a name's node; what is not given is not constant and of no known class. */
export function definitionAt(
  node: SyntaxNode,
  given: Pick<Definition, 'how' | 'value' | 'scope'> & Partial<Definition>,
): Definition {
  return { name: node.text, type: null, constant: false, span: [node.start, node.end], ...given };
}

function makeScope(kind: Scope['kind'], name: string | null, parent: Scope | null, source: SourceText): Scope {
  return { kind, name, parent, source, definitions: new Map(), inner: new Map(), children: [], routines: new Set() };
}

/** A scope and all that lie inside it. */
export function* scopesIn(scope: Scope): Generator<Scope> {
  const open = [scope];
  for (let next = open.pop(); next; next = open.pop()) {
    yield next;
    open.push(...next.children);
  }
}
