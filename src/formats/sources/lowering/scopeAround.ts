import type { Scope } from './program.ts';

/** The nearest scope of the file that defines a name, members of the class around included; null where none does. */
export function holderOf(name: string, from: Scope): Scope | null {
  for (let scope: Scope | null = from; scope; scope = scope.parent) {
    if (scope.definitions.has(name)) return scope;
    const owner = scope.kind === 'routine' && scope.name !== null ? innerScope(scope.name, scope) : null;
    if (owner?.definitions.has(name)) return owner;
  }
  return null;
}

/** The class that a scope lies in; null where it lies in none. */
export function classAround(from: Scope): Scope | null {
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
