import type { Include } from '#core/code.ts';
import { localInclude, localModule } from '../linking/localFile.ts';
import type { SourceContext } from '../linking/sourceContext.ts';
import type { ImportLine, Program } from '../lowering/program.ts';
import cppHeaders from '../tables/cppHeaders.json';
import pythonModules from '../tables/pythonModules.json';
import type { PlaceMaker } from './readPins.ts';

/** Headers and modules that a file asks for, each once, with where they come from. */
export function readIncludes(program: Program, context: SourceContext, placeAt: PlaceMaker): Include[] {
  const seen = new Set<string>();
  return program.imports.flatMap((line) => {
    if (seen.has(line.written)) return [];
    seen.add(line.written);
    const origin =
      program.language === 'cpp' ? headerOrigin(line, program, context) : moduleOrigin(line, program, context);
    return [{ written: line.written, ...origin, place: placeAt(program.source, line.span) }];
  });
}

type Origin = Pick<Include, 'library' | 'kind' | 'found'>;

const standard: Origin = { library: null, kind: 'standard', found: true };
const local: Origin = { library: null, kind: 'local', found: true };

const coreHeaders = new Set([...cppHeaders.standard, ...cppHeaders.core]);
const bundled = new Map(Object.entries(cppHeaders.bundled));
const libraries = new Map(Object.entries(cppHeaders.libraries));

function headerOrigin({ written, quoted }: ImportLine, program: Program, context: SourceContext): Origin {
  // A file of the build hides what is installed: with quotes always, and a header of no known origin with brackets too.
  const isThere = localInclude(program.source.file, written, context) !== null;
  if (quoted && isThere) return local;
  if (coreHeaders.has(written) || cppHeaders.prefixes.some((prefix) => written.startsWith(prefix))) return standard;
  const withEditor = bundled.get(written);
  if (withEditor !== undefined) return { ...standard, library: withEditor };
  if (isThere) return local;
  const library = libraries.get(written);
  if (library !== undefined) return { library, kind: 'external', found: true };
  return quoted ? { ...local, found: false } : { library: null, kind: 'external', found: true };
}

const python = new Set(pythonModules.python);
const micropython = new Set(pythonModules.micropython);
const circuitpython = new Set(pythonModules.circuitpython);
const ofTheMaker = new Set(pythonModules.ofTheMaker);
const packages = new Map(Object.entries(pythonModules.packages));

function moduleOrigin({ written }: ImportLine, program: Program, context: SourceContext): Origin {
  if (localModule(program.source.file, written, context) !== null) return local;
  if (written.startsWith('.')) return { ...local, found: false };
  const top = written.split('.')[0] ?? written;
  if (ofTheMaker.has(top) && isForBoard(program)) return { ...local, found: false };
  // `neopixel` and a few more are built into one firmware and a package for the other.
  const builtIn = usesCircuitPython(program) ? circuitpython : micropython;
  const package_ = packages.get(top);
  if (builtIn.has(top) || (python.has(top) && package_ === undefined)) return standard;
  if (package_ === undefined && (micropython.has(top) || circuitpython.has(top))) return standard;
  const nearly = localModule(program.source.file, written, { ...context, fileExists: context.fileNearly });
  if (package_ === undefined && nearly !== null) return { ...local, found: false };
  return { library: package_ ?? patternedPackage(top), kind: 'external', found: true };
}

function isForBoard({ imports }: Program): boolean {
  return imports.some(({ written }) =>
    /^(machine|board|network|wifi|micropython|digitalio|busio|analogio|rp2|esp32)\b/.test(written),
  );
}

/** Judged by the modules that only one of the two firmwares has. */
function usesCircuitPython({ imports }: Program): boolean {
  const tops = imports.map(({ written }) => written.split('.')[0] ?? '');
  return (
    !tops.includes('machine') &&
    tops.some((top) => top === 'board' || top.endsWith('io') || top.startsWith('adafruit_'))
  );
}

function patternedPackage(module: string): string | null {
  for (const [pattern, name] of packages) {
    const [before = '', after] = pattern.split('*');
    if (after !== undefined && module.startsWith(before))
      return name.replace('{1}', module.slice(before.length).replaceAll('_', '-'));
  }
  return null;
}
