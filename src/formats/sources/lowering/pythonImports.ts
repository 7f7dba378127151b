import type { Span } from '#core/place.ts';
import type { SyntaxNode } from '#core/syntax.ts';
import type { Draft } from './draft.ts';
import { operands } from './operands.ts';
import { define, type Scope, type Value } from './program.ts';

/** `import a.b`, `import a.b as c`. */
export function importModule(name: SyntaxNode, scope: Scope, draft: Draft): void {
  const module = name.type === 'aliased_import' ? name.field('name') : name;
  if (module?.type !== 'dotted_name') return;
  draft.imports.push({ written: module.text, quoted: false, span: [module.start, module.end] });
  const alias = name.type === 'aliased_import' ? name.field('alias') : null;
  const path = module.text.split('.');
  // `import a.b` makes the name `a` known; `import a.b as c` makes `c` stand for `a.b`.
  const local = alias?.text ?? path[0] ?? '';
  bindModule(local, alias ? path : path.slice(0, 1), [module.start, module.end], scope);
}

/** `from a import b`, `from a import *`, `from . import b`. */
export function importNames(node: SyntaxNode, scope: Scope, draft: Draft): void {
  const module = node.field('module_name');
  if (!module) return;
  const isFolder = /^\.+$/.test(module.text);
  if (!isFolder) draft.imports.push({ written: module.text, quoted: false, span: [module.start, module.end] });
  if (node.children.some(({ type }) => type === 'wildcard_import')) draft.openModules.push(module.text);
  for (const name of operands(node).filter((child) => child !== module)) {
    const original = name.type === 'aliased_import' ? name.field('name') : name;
    if (original?.type !== 'dotted_name') continue;
    // `from . import pins` asks for the module `.pins`.
    if (isFolder)
      draft.imports.push({
        written: `${module.text}${original.text}`,
        quoted: false,
        span: [original.start, original.end],
      });
    const local = name.type === 'aliased_import' ? (name.field('alias')?.text ?? '') : original.text;
    bindModule(local, [...modulePath(module.text), original.text], [original.start, original.end], scope);
  }
}

/** `.pins` keeps its dot as the first step of the path. */
function modulePath(written: string): string[] {
  const dots = /^\.*/.exec(written)?.[0] ?? '';
  const rest = written.slice(dots.length);
  return [...(dots === '' ? [] : [dots]), ...(rest === '' ? [] : rest.split('.'))];
}

function bindModule(name: string, path: readonly string[], span: Span, scope: Scope): void {
  const value: Value = { kind: 'name', path, written: path.join('.'), span };
  define({ name, how: 'module', value, type: null, scope, constant: true, span }, scope);
}
