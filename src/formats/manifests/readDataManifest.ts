import { isMap, isScalar, isSeq, LineCounter, parseDocument, type YAMLMap } from 'yaml';
import type { Dependency } from '#core/code.ts';
import type { Span } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import type { SourceText } from '#core/sourceText.ts';
import type { Manifest } from './manifest.ts';
import { placeWithoutSecrets } from './placeWithoutSecrets.ts';
import { dependencyAt, type Named, parseBracketed, parseLibrarySpec, pinned } from './requirement.ts';

/** A sketch's profiles in YAML: each with a board (`fqbn`), platforms and libraries such as `Name (1.2.3)`. */
export function readProfiles(source: SourceText): Manifest {
  const { root, problems } = rootOf(source);
  const profiles = root ? mapAt(root, 'profiles') : null;
  const dependencies: Dependency[] = [];
  for (const { value } of profiles?.items ?? []) {
    const libraries = isMap(value) ? value.get('libraries', true) : null;
    for (const item of isSeq(libraries) ? libraries.items : []) {
      const node = isMap(item)
        ? (item.get('dependency', true) ?? item.get('git', true) ?? item.get('dir', true))
        : item;
      const dependency = scalarDependency(source, node, (text) =>
        /:\/\//.test(text) ? parseLibrarySpec(text) : parseBracketed(text),
      );
      if (
        dependency &&
        !dependencies.some(({ library, version }) => library === dependency.library && version === dependency.version)
      ) {
        dependencies.push(dependency);
      }
    }
  }
  const name = root ? textAt(root, 'default_profile') : null;
  const first = profiles?.items[0]?.value;
  const chosen = (name === null || !profiles ? null : mapAt(profiles, name)) ?? (isMap(first) ? first : null);
  const board = (chosen ? textAt(chosen, 'fqbn') : null) ?? (root ? textAt(root, 'default_fqbn') : null);
  const platforms = chosen?.get('platforms', true);
  const platform = (isSeq(platforms) ? platforms.items : []).flatMap((item) =>
    isMap(item) ? (textAt(item, 'platform') ?? []) : [],
  );
  const settings = {
    ...(board === null ? {} : { fqbn: board }),
    ...(platform.length === 0 ? {} : { platform: platform.join(', ') }),
  };
  return { dependencies, board, settings, problems };
}

/** Dependencies as a record of name and version, or as a list of records with `name` and `version`. */
export function readEntries(source: SourceText): Manifest {
  const { root, problems } = rootOf(source);
  const listed = root?.get('dependencies', true);
  const dependencies: Dependency[] = [];
  for (const item of isSeq(listed) ? listed.items : []) {
    const version = isMap(item) ? textAt(item, 'version') : null;
    const dependency = scalarDependency(source, isMap(item) ? item.get('name', true) : item, (library) => ({
      library,
      version: pinned(version),
    }));
    if (dependency) dependencies.push(dependency);
  }
  const settings: Record<string, string> = {};
  for (const { key, value } of isMap(listed) ? listed.items : []) {
    const version = isMap(value) ? textAt(value, 'version') : isScalar(value) ? String(value.value ?? '') : null;
    const dependency = scalarDependency(source, key, (library) => ({ library, version: pinned(version) }));
    // The kit itself is what builds, no library.
    if (dependency?.library === 'idf') settings.idf = dependency.version ?? '*';
    else if (dependency) dependencies.push(dependency);
  }
  return { dependencies, board: null, settings, problems };
}

/** Dependencies as pairs of name and version under `deps`. */
export function readPairs(source: SourceText): Manifest {
  const { root, problems } = rootOf(source);
  const listed = root?.get('deps', true);
  const dependencies = (isSeq(listed) ? listed.items : []).flatMap((item) => {
    const [name, version] = isSeq(item) ? item.items : [item];
    const written = isScalar(version) ? String(version.value ?? '') : null;
    return (
      scalarDependency(source, name, (library) => ({
        ...(parseLibrarySpec(library) ?? { library }),
        version: pinned(written),
      })) ?? []
    );
  });
  return { dependencies, board: null, settings: {}, problems };
}

/** YAML 1.2 holds JSON as a subset, so one reader with offsets serves both. */
function rootOf(source: SourceText): { root: YAMLMap | null; problems: Problem[] } {
  const document = parseDocument(source.text, {
    lineCounter: new LineCounter(),
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: 'silent',
  });
  const [fault] = document.errors;
  const at: Span = [Math.min(fault?.pos[0] ?? 0, source.text.length), Math.min(fault?.pos[1] ?? 0, source.text.length)];
  const problems = fault
    ? [
        {
          place: placeWithoutSecrets(source, at),
          message:
            'The list of dependencies cannot be read beyond this point: its brackets, quotes or indents do not match.',
          remedy: 'Correct it here; what stands before was read.',
        },
      ]
    : [];
  return { root: isMap(document.contents) ? document.contents : null, problems };
}

function scalarDependency(source: SourceText, node: unknown, read: (text: string) => Named | null): Dependency | null {
  if (!isScalar(node) || !node.range || typeof node.value !== 'string') return null;
  const named = read(node.value);
  if (!named) return null;
  return dependencyAt(source, [node.range[0], node.range[1]], () => named);
}

function mapAt(map: YAMLMap, key: string): YAMLMap | null {
  const value = map.get(key, true);
  return isMap(value) ? value : null;
}

function textAt(map: YAMLMap, key: string): string | null {
  const value = map.get(key, true);
  return isScalar(value) && value.value !== null && value.value !== undefined ? String(value.value) : null;
}
