import type { Span } from '#core/place.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import type { Draft } from './draft.ts';
import { operands } from './operands.ts';
import type { Call, Item, Scope, Value } from './program.ts';

/** Deeper expressions say nothing that a pin or a number could be read from. */
const deepest = 48;

/** What a C++ expression says; `other` where it is no literal, name, list or call. */
export function cppValue(node: SyntaxNode, scope: Scope, draft: Draft, depth = 0): Value {
  const span: Span = [node.start, node.end];
  const other: Value = { kind: 'other', span };
  if (depth > deepest) return other;
  const inner = (child: SyntaxNode | null): Value => (child ? cppValue(child, scope, draft, depth + 1) : other);
  switch (node.type) {
    case 'number_literal':
      return { kind: 'number', text: node.text, span };
    case 'true':
    case 'false':
      return { kind: 'name', path: [node.text], written: node.text, span };
    case 'string_literal':
    case 'raw_string_literal':
    case 'concatenated_string':
      return textValue(node);
    case 'initializer_list':
      return { kind: 'list', items: itemsOf(node, scope, draft, depth + 1), span };
    case 'parenthesized_expression':
    case 'pointer_expression':
      return inner(node.field('argument') ?? operands(node)[0] ?? null);
    case 'cast_expression':
      return inner(node.field('value'));
    case 'unary_expression':
      return negated(node, inner(node.field('argument'))) ?? other;
    case 'conditional_expression':
      return {
        kind: 'either',
        options: [inner(node.field('consequence')), inner(node.field('alternative'))],
        span,
      };
    case 'subscript_expression':
      return { kind: 'element', of: inner(node.field('argument')), index: indexOf(node), span };
    case 'call_expression': {
      const cast = castArgument(node);
      return cast ? inner(cast) : { kind: 'call', call: cppCall(node, scope, draft, null, depth), span };
    }
    case 'new_expression':
    case 'compound_literal_expression':
      return { kind: 'call', call: cppCall(node, scope, draft, null, depth), span };
    default:
      return named(node, inner, span) ?? other;
  }
}

/** The call or the making of an object that a node is; the same record each time it is asked for. */
export function cppCall(node: SyntaxNode, scope: Scope, draft: Draft, into: string | null = null, depth = 0): Call {
  const known = draft.calls.get(node);
  if (known) return known;
  const made = node.type !== 'call_expression';
  const target = node.field(made ? 'type' : 'function');
  const list = node.field('arguments') ?? node.field('value');
  const call: Call = {
    how: made ? 'make' : 'call',
    callee: target ? calleePath(target) : [],
    template: target ? templateOf(target, scope, draft, depth + 1) : [],
    args: list ? itemsOf(list, scope, draft, depth + 1) : [],
    into,
    scope,
    span: [node.start, node.end],
  };
  draft.calls.set(node, call);
  return call;
}

/** Entries of an argument list or a braced list, comments left out. */
export function itemsOf(list: SyntaxNode, scope: Scope, draft: Draft, depth = 0): Item[] {
  return operands(list).map((node) => {
    if (node.type !== 'initializer_pair') return { name: null, value: cppValue(node, scope, draft, depth) };
    const value = node.field('value');
    const designator = node.field('designator');
    const name = designator?.type === 'field_designator' ? (designator.children[0]?.text ?? null) : null;
    return {
      name,
      value: value ? cppValue(value, scope, draft, depth) : { kind: 'other', span: [node.start, node.end] },
    };
  });
}

/** Values between the angle brackets of a type or a method. */
export function templateOf(target: SyntaxNode, scope: Scope, draft: Draft, depth = 0): Value[] {
  let node: SyntaxNode | null = target;
  for (let hops = 0; node && hops < 4; hops++) {
    if (node.type.startsWith('template_')) {
      return operands(node.field('arguments') ?? node).map((argument) =>
        cppValue(
          argument.type === 'type_descriptor' ? (argument.field('type') ?? argument) : argument,
          scope,
          draft,
          depth,
        ),
      );
    }
    node = node.field('field') ?? node.field('name');
  }
  return [];
}

/** `strip.begin` as ['strip', 'begin'], subscripts and template arguments left out; empty where it is no name. */
export function calleePath(node: SyntaxNode, depth = 0): string[] {
  if (depth > deepest) return [];
  switch (node.type) {
    case 'identifier':
    case 'field_identifier':
    case 'type_identifier':
    case 'namespace_identifier':
    case 'primitive_type':
    case 'this':
    case 'sized_type_specifier':
      return [node.text];
    case 'qualified_identifier':
    case 'field_expression':
    case 'dependent_name': {
      const left = node.field('scope') ?? node.field('argument');
      const right = node.field('name') ?? node.field('field');
      return [...(left ? calleePath(left, depth + 1) : []), ...(right ? calleePath(right, depth + 1) : [])];
    }
    case 'template_function':
    case 'template_method':
    case 'template_type': {
      const name = node.field('name');
      return name ? calleePath(name, depth + 1) : [];
    }
    case 'subscript_expression':
    case 'pointer_expression':
    case 'parenthesized_expression': {
      const inner = node.field('argument') ?? operands(node)[0];
      return inner ? calleePath(inner, depth + 1) : [];
    }
    default:
      return [];
  }
}

function named(node: SyntaxNode, inner: (child: SyntaxNode | null) => Value, span: Span): Value | null {
  if (node.type === 'field_expression') {
    const of = inner(node.field('argument'));
    const name = node.field('field')?.text ?? '';
    if (of.kind !== 'name') return { kind: 'member', of, name, span };
    return { kind: 'name', path: [...of.path, name], written: spaceless(node.text), span };
  }
  const path = calleePath(node);
  return path.length > 0 ? { kind: 'name', path, written: spaceless(node.text), span } : null;
}

/** The content of a text literal, or of several in a row, up to the last quote. */
function textValue(node: SyntaxNode): Value {
  const parts =
    node.type === 'concatenated_string' ? node.children.filter(({ type }) => type.endsWith('_literal')) : [node];
  const contents = parts.flatMap(({ children }) =>
    children.filter(({ type }) => type.endsWith('_content') || type === 'escape_sequence'),
  );
  const first = contents[0];
  const last = contents.at(-1);
  if (!first || !last) return { kind: 'text', text: '', span: [node.end - 1, node.end - 1] };
  return { kind: 'text', text: contents.map(({ text }) => text).join(''), span: [first.start, last.end] };
}

function negated(node: SyntaxNode, argument: Value): Value | null {
  if (argument.kind !== 'number' || node.field('operator')?.text !== '-') return null;
  return { kind: 'number', text: `-${argument.text}`, span: [node.start, node.end] };
}

function indexOf(node: SyntaxNode): string | null {
  const list = node.field('indices') ?? node.field('index');
  const index = list?.type === 'subscript_argument_list' ? operands(list)[0] : list;
  return index?.type === 'number_literal' ? index.text : null;
}

const castNames = new Set(['static_cast', 'reinterpret_cast', 'const_cast', 'F', 'PSTR', 'String']);

/** The argument of `static_cast<int>(x)`, `uint8_t(x)`, `F("text")` and the like: it alone carries meaning. */
function castArgument(call: SyntaxNode): SyntaxNode | null {
  const target = call.field('function');
  const list = call.field('arguments');
  const only = list ? operands(list) : [];
  if (!target || only.length !== 1) return null;
  const name = target.type === 'template_function' ? target.field('name')?.text : target.text;
  const isCast =
    target.type === 'primitive_type' ||
    castNames.has(name ?? '') ||
    /^(u?int\d+_t|gpio_num_t|byte|pin_size_t)$/.test(name ?? '');
  return isCast ? (only[0] ?? null) : null;
}

function spaceless(text: string): string {
  return text.replace(/\s+/g, '');
}
