import type { SourceText } from '#core/sourceText.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import { type Draft, type Frame, finishDraft, inside, startDraft, walk } from './draft.ts';
import { operands } from './operands.ts';
import { define, definitionAt, openScope, type Program, type Routine, type Scope, type Value } from './program.ts';
import { importModule, importNames } from './pythonImports.ts';
import { runThrough } from './pythonLoops.ts';
import { dottedPath, pythonCall, pythonValue } from './pythonValue.ts';
import { classAround } from './scopeAround.ts';

/** What a Python file says: names, calls, imports. Branches of `if False` are left out. */
export function lowerPython(source: SourceText, tree: SyntaxNode): Program {
  const draft = startDraft(source);
  walk({ node: tree, scope: draft.file, certain: true }, (frame) => visit(frame, draft));
  return finishDraft(draft, 'python');
}

function visit(frame: Frame, draft: Draft): Frame[] {
  const { node, scope } = frame;
  switch (node.type) {
    case 'comment':
      draft.unread.push({ span: [node.start, node.end], why: 'comment' });
      return [];
    case 'import_statement':
      for (const name of operands(node)) importModule(name, scope, draft);
      return [];
    case 'import_from_statement':
      importNames(node, scope, draft);
      return [];
    case 'class_definition':
      return inside({ ...frame, scope: openScope('class', node.field('name')?.text ?? null, scope) });
    case 'function_definition':
    case 'lambda':
      return routine(frame, draft);
    case 'if_statement':
      return conditional(frame, draft);
    case 'for_statement':
      runThrough(node, scope, scope, draft);
      return inside(frame);
    case 'list_comprehension':
    case 'generator_expression':
      return comprehension(frame, draft);
    case 'assignment':
      assign(node, scope, draft);
      return inside(frame);
    case 'as_pattern':
      nameResult(node, scope, draft);
      return inside(frame);
    case 'call':
      pythonCall(node, scope, draft);
      return inside(frame);
    default:
      if (node.isError) draft.unread.push({ span: [node.start, node.end], why: 'fault' });
      return inside(frame);
  }
}

function routine(frame: Frame, draft: Draft): Frame[] {
  const { node, scope } = frame;
  const name = node.field('name')?.text ?? '';
  const owner = scope.kind === 'class' ? scope.name : null;
  const within = openScope('routine', null, scope);
  scope.routines.add(name);
  if (name !== '') draft.firstRoutine = Math.min(draft.firstRoutine, node.start);
  const parameters = operands(node.field('parameters') ?? node).filter(
    ({ type }) => type.includes('parameter') || type === 'identifier',
  );
  // The object itself is no argument of a call.
  const own = owner === null ? 0 : 1;
  if (node.field('parameters')) {
    parameters.forEach((parameter, i) => {
      defineParameter(parameter, i - own, { name: name === '__init__' ? (owner ?? name) : name, owner }, within, draft);
    });
  }
  return inside({ ...frame, scope: within });
}

function defineParameter(node: SyntaxNode, index: number, of: Routine, scope: Scope, draft: Draft): void {
  const name =
    node.type === 'identifier' ? node : (node.field('name') ?? node.children.find(({ type }) => type === 'identifier'));
  if (name?.type !== 'identifier') return;
  const given = node.field('value');
  const value = given ? pythonValue(given, scope, draft) : null;
  define(definitionAt(name, { how: 'parameter', value, scope, of: { routine: of, index } }), scope);
}

function conditional(frame: Frame, draft: Draft): Frame[] {
  const condition = frame.node.field('condition');
  const body = frame.node.field('consequence');
  const isOff = condition?.type === 'false' || (condition?.type === 'integer' && condition.text === '0');
  if (!isOff || !body) return inside(frame);
  draft.unread.push({ span: [body.start, body.end], why: 'inactive' });
  return inside(
    frame,
    frame.node.children.filter((child) => child !== body),
  );
}

function comprehension(frame: Frame, draft: Draft): Frame[] {
  const scope = openScope('block', null, frame.scope);
  for (const clause of frame.node.children.filter(({ type }) => type === 'for_in_clause')) {
    runThrough(clause, frame.scope, scope, draft);
  }
  return inside({ ...frame, scope });
}

function assign(node: SyntaxNode, scope: Scope, draft: Draft): void {
  const [left, right] = [node.field('left'), finalValue(node)];
  if (!left || !right) return;
  if (left.type === 'pattern_list' || left.type === 'tuple_pattern') {
    const values = operands(right);
    if (!['expression_list', 'tuple', 'list'].includes(right.type)) return;
    operands(left).forEach((name, i) => {
      const value = values[i];
      if (value) give(name, value, scope, draft);
    });
    return;
  }
  give(left, right, scope, draft);
}

/** The last value of `a = b = 5`. */
function finalValue(node: SyntaxNode): SyntaxNode | null {
  let right = node.field('right');
  while (right?.type === 'assignment') right = right.field('right');
  return right;
}

function give(target: SyntaxNode, given: SyntaxNode, scope: Scope, draft: Draft): void {
  const path = dottedPath(target);
  const name = path.at(-1);
  if (name === undefined || target.type === 'subscript') return;
  if (given.type === 'call') pythonCall(given, scope, draft, name);
  const owner = path[0] === 'self' && path.length === 2 ? classAround(scope) : null;
  const value = pythonValue(comprehended(given, scope, draft), scope, draft);
  if (path.length > 1 && !owner) {
    // Giving a property a value acts like a call: `led.direction = …` sets up a pin.
    draft.calls.set(target, {
      how: 'call',
      callee: [...path.slice(0, -1), `${name}=`],
      template: [],
      args: [{ name: null, value }],
      into: null,
      scope,
      span: [target.start, given.end],
    });
    return;
  }
  const how = owner ? 'field' : 'variable';
  define(definitionAt(target, { name, how, value, scope, constant: name === name.toUpperCase() }), owner ?? scope);
}

/** Visits a comprehension ahead of the walk, so that its body is known as a call of its own scope. */
function comprehended(node: SyntaxNode, scope: Scope, draft: Draft): SyntaxNode {
  const body = node.type === 'list_comprehension' || node.type === 'generator_expression' ? node.field('body') : null;
  if (body?.type === 'call') {
    const within = openScope('block', null, scope);
    for (const clause of node.children.filter(({ type }) => type === 'for_in_clause'))
      runThrough(clause, scope, within, draft);
    pythonCall(body, within, draft);
  }
  return node;
}

/** `with busio.I2C(…) as i2c:` */
function nameResult(node: SyntaxNode, scope: Scope, draft: Draft): void {
  const [made, target] = operands(node);
  const name = target?.children[0];
  if (made?.type !== 'call' || name?.type !== 'identifier') return;
  const call = pythonCall(made, scope, draft, name.text);
  const value: Value = { kind: 'call', call, span: call.span };
  define(definitionAt(name, { how: 'variable', value, scope }), scope);
}
