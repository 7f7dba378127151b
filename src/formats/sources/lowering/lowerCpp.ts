import type { SourceText } from '#core/sourceText.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import type { KnownMacros } from './conditions.ts';
import { declare } from './cppDeclarations.ts';
import { countingLoop, runThrough } from './cppLoops.ts';
import { nameBehind } from './cppNames.ts';
import { defineEnumerators, defineParameters } from './cppParameters.ts';
import { calleePath, cppCall, cppValue } from './cppValue.ts';
import { type Draft, type Frame, finishDraft, inside, startDraft, walk } from './draft.ts';
import { operands } from './operands.ts';
import { compiled, defineMacro, forget, noteInclude, noteSwitchedOff } from './preprocess.ts';
import { define, definitionAt, openScope, type Program, type Scope } from './program.ts';
import { classAround, holderOf } from './scopeAround.ts';

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
    define(definitionAt(name, { how: 'assignment', value, scope: within }), owner);
  }
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
  define(definitionAt(left, { name, how: 'assignment', value, scope }), holder);
}

function commentsOf(node: SyntaxNode): SyntaxNode[] {
  return node.children.filter(({ type }) => type === 'comment');
}
