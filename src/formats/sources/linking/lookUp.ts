import type { Definition, Scope } from '../lowering/program.ts';
import { type Linked, namedScope } from './link.ts';

/** Definitions of a name that a scope sees, from the nearest outwards, then in the files that it can use. */
export function lookUp(name: string, from: Scope, linked: Linked): readonly Definition[] {
  const isPython = linked.programAt(from.source.file)?.language === 'python';
  for (let scope: Scope | null = from; scope; scope = scope.parent) {
    // Methods of Python do not see the names of their class.
    const found = isPython && scope.kind === 'class' && scope !== from ? undefined : scope.definitions.get(name);
    if (found) return scope.kind === 'file' ? withValues(found, name, from, linked) : found;
    const owner = scope.kind === 'routine' && scope.name !== null ? namedScope(scope.name, scope, linked) : null;
    const member = owner?.definitions.get(name);
    if (member) return member;
  }
  return elsewhere(name, from, linked);
}

/** `extern const int LED;` says that another file gives the value. */
function withValues(found: readonly Definition[], name: string, from: Scope, linked: Linked): readonly Definition[] {
  if (found.some(({ value }) => value !== null)) return found.filter(({ value }) => value !== null);
  const others = elsewhere(name, from, linked);
  return others.some(({ value }) => value !== null) ? others : found;
}

function elsewhere(name: string, from: Scope, linked: Linked): readonly Definition[] {
  const isGiven = ({ value }: Definition) => value !== null;
  const [, ...visible] = linked.visibleFrom(from.source.file);
  for (const { file } of visible) {
    const found = file.definitions.get(name)?.filter(isGiven);
    if (found && found.length > 0) return found;
  }
  if (linked.programAt(from.source.file)?.language === 'python') return [];
  // The linker joins what the compiler does not see: one file of the build that alone gives the name a value.
  const files = linked.programs.filter(
    ({ language, file }) => language === 'cpp' && file.definitions.get(name)?.some(isGiven),
  );
  const only = files.length === 1 ? files[0] : undefined;
  return only?.file.definitions.get(name)?.filter(isGiven) ?? [];
}

/** The class that a scope lies in, also where its body stands in another file; null where it lies in none. */
export function classAround(from: Scope, linked: Linked): Scope | null {
  for (let scope: Scope | null = from; scope; scope = scope.parent) {
    if (scope.kind === 'class') return scope;
    if (scope.kind === 'routine' && scope.name !== null) return namedScope(scope.name, scope, linked);
  }
  return null;
}
