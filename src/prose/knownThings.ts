import type { Build } from '#core/build.ts';
import type { Connection, ConnectionId } from '#core/connection.ts';
import type { Part, Ref } from '#core/part.ts';
import type { Path } from '#core/place.ts';
import { rememberFor } from '#core/remember.ts';
import { slugOf, tokensOf } from '#notation/names.ts';

/** What the build's lists and folders hold, ready to be looked up by the names that the text uses. */
export interface KnownThings {
  /** References of the parts list. */
  readonly partOfRef: ReadonlyMap<Ref, Part>;
  /** References of the parts list and of the wiring: what may have a pin. */
  readonly refs: ReadonlySet<Ref>;
  readonly connections: ReadonlyMap<ConnectionId, Connection>;
  /** The part that a name without a reference means: by id, by maker's number, or by a description that fits no other. */
  partNamed(name: string): Part | null;
  /** The listed tool's name, or null. */
  toolNamed(name: string): string | null;
  /** The file or folder as spelled in the build, looked for from its root, then beside `from`; null where there is none. */
  pathNamed(path: string, from: Path): Path | null;
}

/** Looks up by name in a build. */
export function knownThings(build: Build): KnownThings {
  const { partOfRef, descriptions, byId, bySlug, byDescription } = knownParts(build.parts);
  const wired = build.connections.flatMap(({ from, to }) => [from.ref, to.ref]);
  const tools = new Map(build.tools.map(({ name }) => [tokensOf(name).join(' '), name]));
  const paths = new Set(build.files.flatMap(({ path }) => [path, ...foldersOf(path)]));
  return {
    partOfRef,
    refs: new Set([...partOfRef.keys(), ...wired]),
    connections: new Map(build.connections.map((connection) => [connection.id, connection])),
    partNamed: (name) =>
      byId.get(name) ??
      bySlug.get(slugOf(name)) ??
      build.parts.find(({ mpn }) => mpn !== null && mpn.toUpperCase() === name.toUpperCase()) ??
      onlyOne(byDescription.get(tokensOf(name).join(' ')) ?? []) ??
      onlyOne(fittingParts(name, descriptions)),
    toolNamed: (name) => tools.get(tokensOf(name).join(' ')) ?? null,
    pathNamed: (path, from) => {
      const wanted = plainPath(path);
      const beside = plainPath(`${from.split('/').slice(0, -1).join('/')}/${path}`);
      return [wanted, beside].find((candidate) => candidate !== '' && paths.has(candidate)) ?? null;
    },
  };
}

const knownParts = rememberFor((parts: readonly Part[]) => {
  const byDescription = new Map<string, Part[]>();
  for (const part of parts) {
    if (part.description === '') continue;
    const words = tokensOf(part.description).join(' ');
    byDescription.set(words, [...(byDescription.get(words) ?? []), part]);
  }
  return {
    partOfRef: new Map(parts.flatMap((part) => part.refs.map((ref) => [ref, part] as const))),
    descriptions: parts.map((part) => ({ part, tokens: new Set(tokensOf(wordsOf(part))) })),
    byId: new Map(parts.map((part) => [part.id, part])),
    bySlug: new Map([...parts].reverse().map((part) => [slugOf(part.id), part])),
    byDescription,
  };
});

/** A path without `./`, doubled or trailing slashes, and with `..` resolved. */
export function plainPath(path: string): Path {
  const segments: string[] = [];
  for (const segment of path.replaceAll('\\', '/').split('/')) {
    if (segment === '..') segments.pop();
    else if (segment !== '' && segment !== '.') segments.push(segment);
  }
  return segments.join('/');
}

function wordsOf(part: Part): string {
  const value = part.value.is === 'unknown' ? '' : part.value.claims[0].value.text;
  return [part.description, value, part.package ?? '', part.mpn ?? ''].join(' ');
}

function fittingParts(name: string, all: readonly { part: Part; tokens: ReadonlySet<string> }[]): Part[] {
  const wanted = tokensOf(name);
  if (wanted.length === 0) return [];
  return all.filter(({ tokens }) => wanted.every((token) => tokens.has(token))).map(({ part }) => part);
}

function onlyOne<T>(items: readonly T[]): T | null {
  return items.length === 1 ? (items[0] ?? null) : null;
}

function foldersOf(path: Path): Path[] {
  const segments = path.split('/');
  return segments.slice(0, -1).map((_, index) => segments.slice(0, index + 1).join('/'));
}
