import type { Path } from '#core/place.ts';
import type { Call, Program, Scope } from '../lowering/program.ts';
import { localInclude, localModule } from './localFile.ts';
import type { SourceContext } from './sourceContext.ts';

/** The programs of a build, and what each can see of the others. */
export interface Linked {
  readonly programs: readonly Program[];
  programAt(file: Path): Program | null;
  /** Files whose names a file can use, itself first. */
  visibleFrom(file: Path): readonly Program[];
  /** Calls, and makings of objects, by the last step of what is called. */
  callsTo(name: string): readonly Call[];
  /** The file that a module of the build is, as seen from another file. */
  module(from: Path, written: string): Program | null;
}

export function link(programs: readonly Program[], context: SourceContext): Linked {
  const byFile = new Map(programs.map((program) => [program.source.file, program]));
  const calls = new Map<string, Call[]>();
  for (const call of programs.flatMap((program) => program.calls)) {
    const name = call.callee.at(-1) ?? '';
    const known = calls.get(name);
    if (known) known.push(call);
    else calls.set(name, [call]);
  }
  const visible = new Map<Path, readonly Program[]>();
  const modules = new Map<string, Program | null>();
  const module = (from: Path, written: string) => {
    const key = `${from}\n${written}`;
    const known = modules.get(key);
    if (known !== undefined) return known;
    const found = byFile.get(localModule(from, written, context) ?? '') ?? null;
    modules.set(key, found);
    return found;
  };
  return {
    programs,
    programAt: (file) => byFile.get(file) ?? null,
    callsTo: (name) => calls.get(name) ?? [],
    module,
    visibleFrom(file) {
      const known = visible.get(file);
      if (known) return known;
      const found = reachable(file, programs, byFile, context, module);
      visible.set(file, found);
      return found;
    },
  };
}

function reachable(
  file: Path,
  programs: readonly Program[],
  byFile: ReadonlyMap<Path, Program>,
  context: SourceContext,
  module: (from: Path, written: string) => Program | null,
): Program[] {
  const start = byFile.get(file);
  if (!start) return [];
  const found = new Set([start]);
  // A Set is walked in the order of insertion, additions during the walk included.
  for (const program of found) {
    const at = program.source.file;
    const next =
      program.language === 'cpp'
        ? [
            ...program.imports.map(({ written }) => byFile.get(localInclude(at, written, context) ?? '')),
            ...tabsBeside(program, programs),
          ]
        : program.openModules.map((written) => module(at, written));
    for (const other of next) if (other) found.add(other);
  }
  return [...found];
}

/** The tabs of a sketch are compiled as one file. */
function tabsBeside(program: Program, programs: readonly Program[]): Program[] {
  const at = program.source.file;
  if (!/\.(ino|pde)$/i.test(at)) return [];
  return programs.filter(({ source }) => /\.(ino|pde)$/i.test(source.file) && folderOf(source.file) === folderOf(at));
}

function folderOf(path: Path): Path {
  return path.slice(0, path.lastIndexOf('/') + 1);
}

/** The scope of a class, enumeration or namespace that a file can see. */
export function namedScope(name: string, from: Scope, linked: Linked): Scope | null {
  for (let scope: Scope | null = from; scope; scope = scope.parent) {
    const inner = scope.inner.get(name);
    if (inner) return inner;
  }
  for (const { file } of linked.visibleFrom(from.source.file)) {
    const inner = file.inner.get(name);
    if (inner) return inner;
  }
  return null;
}
