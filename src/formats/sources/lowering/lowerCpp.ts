import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import { branchesOf, type KnownMacros, numberIn } from './conditions.ts';
import { declare, defineEnumerators, defineParameters, nameBehind } from './cppDeclarations.ts';
import { calleePath, cppCall, cppValue, operands } from './cppValue.ts';
import { type Draft, type Frame, finishDraft, inside, startDraft, walk } from './draft.ts';
import { macroBody } from './macroBody.ts';
import { define, openScope, type Program, type Scope, type Value } from './program.ts';

/** What a C or C++ file says: names, calls, includes. Blocks that are switched off are left out. */
export function lowerCpp(source: SourceText, tree: SyntaxNode): Program {
  const draft = startDraft(source);
  const macros: KnownMacros = new Map();
  walk({ node: tree, scope: draft.file, certain: true }, (frame) => visit(frame, draft, macros));
  return finishDraft(draft, 'cpp');
}

function visit(frame: Frame, draft: Draft, macros: KnownMacros): Frame[] {
  const { node, scope } = frame;
  switch (node.type) {
    case 'comment':
      draft.unread.push({ span: [node.start, node.end], why: 'comment' });
      noteSwitchedOff(node.text, macros);
      return [];
    case 'preproc_include':
      noteInclude(node, draft);
      return [];
    case 'preproc_def':
      defineMacro(frame, draft, macros);
      return inside(frame, commentsOf(node));
    case 'preproc_call':
      forget(frame, macros);
      return [];
    case 'preproc_function_def':
      return inside(frame, commentsOf(node));
    case 'preproc_if':
    case 'preproc_ifdef':
      return compiled(frame, draft, macros);
    case 'namespace_definition':
      return inScope(frame, 'namespace', node.field('name')?.text ?? null);
    case 'struct_specifier':
    case 'class_specifier':
    case 'union_specifier':
      return inScope(frame, 'class', node.field('name')?.text ?? nameBehind(node, scope.source.text));
    case 'enum_specifier':
      defineEnumerators(node, scope, draft);
      return inside(frame);
    case 'function_definition':
      return routine(frame, draft);
    case 'lambda_expression': {
      const within = openScope('routine', null, scope);
      defineParameters(node.field('declarator'), within, draft, { name: '', owner: null });
      return inside({ ...frame, scope: within });
    }
    case 'compound_statement':
      return inside({ ...frame, scope: openScope('block', null, scope) });
    case 'for_statement':
      return countingLoop(frame);
    case 'for_range_loop':
      return runThrough(frame, draft);
    case 'declaration':
    case 'field_declaration':
    case 'type_definition':
      declare(node, scope, draft);
      return inside(frame);
    case 'assignment_expression':
      assign(node, scope, draft);
      return inside(frame);
    case 'call_expression':
    case 'new_expression':
    case 'compound_literal_expression':
      cppCall(node, scope, draft);
      return inside(frame);
    default:
      if (node.isError) draft.unread.push({ span: [node.start, node.end], why: 'fault' });
      return inside(frame);
  }
}

function noteInclude(node: SyntaxNode, draft: Draft): void {
  const path = node.field('path');
  const written = path?.text.slice(1, -1) ?? '';
  if (!path || written === '' || !/^[<"]/.test(path.text)) return;
  draft.imports.push({ written, quoted: path.text.startsWith('"'), span: [path.start, path.end] });
}

function defineMacro({ node, certain }: Frame, draft: Draft, macros: KnownMacros): void {
  const name = node.field('name');
  if (!name) return;
  const body = node.field('value');
  const value = body ? macroBody(body.text, body.start) : null;
  const number = value?.kind === 'number' ? numberIn(value.text) : null;
  if (certain) macros.set(name.text, { defined: true, number });
  else macros.delete(name.text);
  define(
    {
      name: name.text,
      how: 'macro',
      value,
      type: null,
      scope: draft.file,
      constant: true,
      span: [name.start, name.end],
    },
    draft.file,
  );
}

/** `#undef NAME`. */
function forget({ node, certain }: Frame, macros: KnownMacros): void {
  const name = node.field('argument')?.text.trim();
  if (node.field('directive')?.text !== '#undef' || name === undefined) return;
  if (certain) macros.set(name, { defined: false, number: null });
  else macros.delete(name);
}

/** A definition that the author has put behind comment signs is taken as switched off. */
function noteSwitchedOff(comment: string, macros: KnownMacros): void {
  const name = /^\/\/+\s*#\s*define\s+(\w+)/.exec(comment)?.[1];
  if (name !== undefined && !macros.has(name)) macros.set(name, { defined: false, number: null });
}

function compiled(frame: Frame, draft: Draft, macros: KnownMacros): Frame[] {
  return branchesOf(frame.node, macros).flatMap((branch) => {
    if (branch.active !== false) {
      return inside({ ...frame, certain: frame.certain && branch.active === true }, branch.nodes);
    }
    draft.unread.push({ span: [branch.start, branch.end], why: 'inactive' });
    return [];
  });
}

function inScope(frame: Frame, kind: 'class' | 'namespace', name: string | null): Frame[] {
  const body = frame.node.field('body');
  if (!body) return [];
  const known = name === null ? undefined : frame.scope.inner.get(name);
  const scope = kind === 'namespace' && known ? known : openScope(kind, name, frame.scope);
  return inside({ ...frame, scope }, [body]);
}

function routine(frame: Frame, draft: Draft): Frame[] {
  const { node, scope } = frame;
  let declarator = node.field('declarator');
  while (declarator && declarator.type !== 'function_declarator')
    declarator = declarator.field('declarator') ?? declarator.children[0] ?? null;
  const path = declarator ? calleePath(declarator.field('declarator') ?? declarator) : [];
  const name = path.at(-1) ?? '';
  const owner = path.at(-2) ?? (scope.kind === 'class' ? scope.name : null);
  const within = openScope('routine', owner, scope);
  scope.routines.add(name);
  draft.firstRoutine = Math.min(draft.firstRoutine, node.start);
  defineParameters(declarator?.field('parameters') ?? null, within, draft, { name, owner });
  for (const list of node.children.filter(({ type }) => type === 'field_initializer_list')) {
    defineInitialised(list, scope, within, draft);
  }
  return inside({ ...frame, scope: within });
}

/** `Button(int p) : pin(p) {}` gives the field `pin` the value of the parameter. */
function defineInitialised(list: SyntaxNode, owner: Scope, within: Scope, draft: Draft): void {
  for (const initialiser of operands(list)) {
    const [name, values] = initialiser.children;
    const first = values ? operands(values)[0] : undefined;
    if (!name || !first) continue;
    const value = cppValue(first, within, draft);
    define(
      {
        name: name.text,
        how: 'assignment',
        value,
        type: null,
        scope: within,
        constant: false,
        span: [name.start, name.end],
      },
      owner,
    );
  }
}

/** `for (int i = 2; i <= 7; i++)` gives `i` the numbers from 2 to 7. A loop that counts otherwise gives none. */
function countingLoop(frame: Frame): Frame[] {
  const { node } = frame;
  const scope = openScope('block', null, frame.scope);
  const start = node.field('initializer');
  const name = start?.field('declarator')?.field('declarator');
  const children = inside({ ...frame, scope });
  if (!start || name?.type !== 'identifier') return children;
  const span: Span = [name.start, name.end];
  define(
    { name: name.text, how: 'loop', value: rangeOf(node, name.text, scope), type: null, scope, constant: false, span },
    scope,
  );
  return children.filter(({ node: child }) => child !== start);
}

function rangeOf(loop: SyntaxNode, name: string, scope: Scope): Value | null {
  const first = loop.field('initializer')?.field('declarator')?.field('value');
  const condition = loop.field('condition');
  const limit = condition?.field('right');
  const update = loop.field('update');
  const step = update?.type === 'update_expression' ? update.field('operator')?.text : undefined;
  if (!first || !limit || condition?.field('left')?.text !== name) return null;
  const [start, end] = [numberAt(first, scope), numberAt(limit, scope)];
  if (start === null || end === null) return null;
  // The words from the first number to the limit tell all numbers in between.
  const span: Span = [first.start, limit.end];
  switch (`${step} ${condition.field('operator')?.text}`) {
    case '++ <':
      return { kind: 'range', from: start, to: end - 1, span };
    case '++ <=':
      return { kind: 'range', from: start, to: end, span };
    case '-- >':
      return { kind: 'range', from: end + 1, to: start, span };
    case '-- >=':
      return { kind: 'range', from: end, to: start, span };
    default:
      return null;
  }
}

/** A number, or a name that the file itself gives one number. */
function numberAt(node: SyntaxNode, scope: Scope): number | null {
  if (node.type === 'number_literal') return numberIn(node.text);
  const found = node.type === 'identifier' ? (holderOf(node.text, scope)?.definitions.get(node.text) ?? []) : [];
  const [only] = found;
  return found.length === 1 && only?.value?.kind === 'number' ? numberIn(only.value.text) : null;
}

function runThrough(frame: Frame, draft: Draft): Frame[] {
  const { node } = frame;
  const scope = openScope('block', null, frame.scope);
  const list = node.field('right');
  let name = node.field('declarator');
  while (name && name.type !== 'identifier') name = name.field('declarator') ?? name.children[0] ?? null;
  if (name && list) {
    const of = cppValue(list, frame.scope, draft);
    define(
      {
        name: name.text,
        how: 'loop',
        value: { kind: 'element', of, index: null, span: of.span },
        type: null,
        scope: frame.scope,
        constant: false,
        span: [name.start, name.end],
      },
      scope,
    );
  }
  return inside({ ...frame, scope });
}

/** Each assignment is one more thing that its name can stand for. */
function assign(node: SyntaxNode, scope: Scope, draft: Draft): void {
  const [left, right] = [node.field('left'), node.field('right')];
  if (!left || !right || node.field('operator')?.text !== '=') return;
  const path = calleePath(left);
  const name = path.at(-1);
  if (name === undefined) return;
  if (right.type === 'call_expression' || right.type === 'new_expression') cppCall(right, scope, draft, name);
  const holder = path.length === 1 ? holderOf(name, scope) : path[0] === 'this' ? classAround(scope) : null;
  if (!holder) return;
  const value = cppValue(right, scope, draft);
  define({ name, how: 'assignment', value, type: null, scope, constant: false, span: [left.start, left.end] }, holder);
}

function holderOf(name: string, from: Scope): Scope | null {
  for (let scope: Scope | null = from; scope; scope = scope.parent) {
    if (scope.definitions.has(name)) return scope;
    const owner = scope.kind === 'routine' && scope.name !== null ? innerScope(scope.name, scope) : null;
    if (owner?.definitions.has(name)) return owner;
  }
  return null;
}

function classAround(from: Scope): Scope | null {
  for (let scope: Scope | null = from; scope; scope = scope.parent) {
    if (scope.kind === 'class') return scope;
    if (scope.kind === 'routine' && scope.name !== null) return innerScope(scope.name, scope);
  }
  return null;
}

function innerScope(name: string, from: Scope): Scope | null {
  for (let scope: Scope | null = from; scope; scope = scope.parent) {
    const inner = scope.inner.get(name);
    if (inner) return inner;
  }
  return null;
}

function commentsOf(node: SyntaxNode): SyntaxNode[] {
  return node.children.filter(({ type }) => type === 'comment');
}
