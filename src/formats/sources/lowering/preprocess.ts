import type { SyntaxNode } from '#core/syntax.ts';
import { branchesOf, type KnownMacros, numberIn } from './conditions.ts';
import { type Draft, type Frame, inside } from './draft.ts';
import { macroBody } from './macroBody.ts';
import { define, definitionAt } from './program.ts';

/** `#include` with its path as written. A macro in its place says nothing. */
export function noteInclude(node: SyntaxNode, draft: Draft): void {
  const path = node.field('path');
  const written = path?.text.slice(1, -1) ?? '';
  if (!path || written === '' || !/^[<"]/.test(path.text)) return;
  draft.imports.push({ written, quoted: path.text.startsWith('"'), span: [path.start, path.end] });
}

/** `#define NAME body`. */
export function defineMacro({ node, certain }: Frame, draft: Draft, macros: KnownMacros): void {
  const name = node.field('name');
  if (!name) return;
  const body = node.field('value');
  const value = body ? macroBody(body.text, body.start) : null;
  const number = value?.kind === 'number' ? numberIn(value.text) : null;
  if (certain) macros.set(name.text, { defined: true, number });
  else macros.delete(name.text);
  define(definitionAt(name, { how: 'macro', value, scope: draft.file, constant: true }), draft.file);
}

/** `#undef NAME`. */
export function forget({ node, certain }: Frame, macros: KnownMacros): void {
  const name = node.field('argument')?.text.trim();
  if (node.field('directive')?.text !== '#undef' || name === undefined) return;
  if (certain) macros.set(name, { defined: false, number: null });
  else macros.delete(name);
}

/** A definition that the author has put behind comment signs is taken as switched off. */
export function noteSwitchedOff(comment: string, macros: KnownMacros): void {
  const name = /^\/\/+\s*#\s*define\s+(\w+)/.exec(comment)?.[1];
  if (name !== undefined && !macros.has(name)) macros.set(name, { defined: false, number: null });
}

/** What stands in the branches of a condition that the compiler sees, or may see. */
export function compiled(frame: Frame, draft: Draft, macros: KnownMacros): Frame[] {
  return branchesOf(frame.node, macros).flatMap((branch) => {
    if (branch.active !== false) {
      return inside({ ...frame, certain: frame.certain && branch.active === true }, branch.nodes);
    }
    draft.unread.push({ span: [branch.start, branch.end], why: 'inactive' });
    return [];
  });
}
