import type { Span } from '#core/place.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import type { Draft } from './draft.ts';
import { operands } from './operands.ts';
import type { Call, Item, Scope, Value } from './program.ts';

const deepest = 48;

/** What a Python expression says; `other` where it is no literal, name, list or call. */
export function pythonValue(node: SyntaxNode, scope: Scope, draft: Draft, depth = 0): Value {
  const span: Span = [node.start, node.end];
  const other: Value = { kind: 'other', span };
  if (depth > deepest) return other;
  const inner = (child: SyntaxNode | null | undefined): Value =>
    child ? pythonValue(child, scope, draft, depth + 1) : other;
  switch (node.type) {
    case 'integer':
    case 'float':
      return { kind: 'number', text: node.text, span };
    case 'string':
    case 'concatenated_string':
      return textValue(node) ?? other;
    case 'identifier':
    case 'true':
    case 'false':
    case 'none':
      return { kind: 'name', path: [node.text], written: node.text, span };
    case 'attribute': {
      const of = inner(node.field('object'));
      const name = node.field('attribute')?.text ?? '';
      if (of.kind !== 'name') return { kind: 'member', of, name, span };
      return { kind: 'name', path: [...of.path, name], written: `${of.written}.${name}`, span };
    }
    case 'subscript':
      return { kind: 'element', of: inner(node.field('value')), index: indexOf(node), span };
    case 'list':
    case 'tuple':
    case 'set':
    case 'expression_list':
      return { kind: 'list', items: operands(node).map((child) => ({ name: null, value: inner(child) })), span };
    case 'dictionary':
      return { kind: 'list', items: operands(node).flatMap((child) => pairOf(child, inner)), span };
    case 'parenthesized_expression':
    case 'await':
      return inner(operands(node)[0]);
    case 'unary_operator': {
      const argument = inner(node.field('argument'));
      const isMinus = node.field('operator')?.text === '-';
      return isMinus && argument.kind === 'number' ? { kind: 'number', text: `-${argument.text}`, span } : other;
    }
    case 'conditional_expression': {
      const [yes, , no] = operands(node);
      return { kind: 'either', options: [inner(yes), inner(no)], span };
    }
    case 'list_comprehension':
    case 'generator_expression': {
      const body = draft.calls.get(node.field('body') ?? node);
      return body ? { kind: 'call', call: body, span: body.span } : other;
    }
    case 'call':
      return { kind: 'call', call: pythonCall(node, scope, draft, null, depth), span };
    default:
      return other;
  }
}

/** The call that a node is; the same record each time it is asked for. */
export function pythonCall(node: SyntaxNode, scope: Scope, draft: Draft, into: string | null = null, depth = 0): Call {
  const known = draft.calls.get(node);
  if (known) return known;
  const target = node.field('function');
  const list = node.field('arguments');
  const args: Item[] = operands(list?.type === 'argument_list' ? list : node)
    .filter((child) => child !== target)
    .map((argument) => {
      const isNamed = argument.type === 'keyword_argument';
      const value = isNamed ? argument.field('value') : argument;
      return {
        name: isNamed ? (argument.field('name')?.text ?? null) : null,
        value: value
          ? pythonValue(value, scope, draft, depth + 1)
          : { kind: 'other', span: [argument.start, argument.end] },
      };
    });
  const call: Call = {
    how: 'call',
    callee: target ? dottedPath(target) : [],
    template: [],
    args,
    into,
    scope,
    span: [node.start, node.end],
  };
  draft.calls.set(node, call);
  return call;
}

/** `machine.Pin` as ['machine', 'Pin'], subscripts left out; empty where it is no name. */
export function dottedPath(node: SyntaxNode): string[] {
  const path: string[] = [];
  for (let part: SyntaxNode | null = node; part; ) {
    if (part.type === 'identifier') return [part.text, ...path.reverse()];
    if (part.type === 'attribute') path.push(part.field('attribute')?.text ?? '');
    else if (part.type !== 'subscript') return [];
    part = part.field(part.type === 'attribute' ? 'object' : 'value');
  }
  return [];
}

/** Null for texts with expressions inside: what they say is not known before they run. */
function textValue(node: SyntaxNode): Value | null {
  const parts = node.type === 'string' ? [node] : node.children.filter(({ type }) => type === 'string');
  const pieces = parts.flatMap(({ children }) => children);
  if (pieces.some(({ type }) => type === 'interpolation')) return null;
  const contents = pieces.filter(({ type }) => type === 'string_content');
  const first = contents[0];
  const last = contents.at(-1);
  if (first && last)
    return { kind: 'text', text: contents.map(({ text }) => text).join(''), span: [first.start, last.end] };
  const close = pieces.find(({ type }) => type === 'string_end')?.start ?? node.end;
  return { kind: 'text', text: '', span: [close, close] };
}

function indexOf(node: SyntaxNode): string | null {
  const index = node.field('subscript');
  if (index?.type === 'integer') return index.text;
  if (index?.type !== 'string') return null;
  const text = textValue(index);
  return text?.kind === 'text' ? text.text : null;
}

function pairOf(pair: SyntaxNode, inner: (child: SyntaxNode | null) => Value): Item[] {
  if (pair.type !== 'pair') return [];
  const key = pair.field('key');
  const text = key?.type === 'string' ? textValue(key) : null;
  return [{ name: text?.kind === 'text' ? text.text : (key?.text ?? null), value: inner(pair.field('value')) }];
}
