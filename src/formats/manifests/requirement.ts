import type { Dependency } from '#core/code.ts';
import type { Span } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';
import { placeWithoutSecrets } from './placeWithoutSecrets.ts';

/** One entry of a dependency list as written, where it stands. Null where it names no library. */
export function dependencyAt(source: SourceText, span: Span, read: (text: string) => Named | null): Dependency | null {
  const named = read(source.text.slice(span[0], span[1]));
  return named ? { ...named, place: placeWithoutSecrets(source, span) } : null;
}

export interface Named {
  readonly library: string;
  readonly version: string | null;
}

/**
 * `owner/Name @ ^1.2.3`, `Name@1.2.3`, `Name`, `Name=https://…`, or an address, which gives the last step of its
 * path and the tag or commit behind `#`. Null for text that is none of these.
 */
export function parseLibrarySpec(text: string): Named | null {
  const spec = text.trim().replace(/^["']|["']$/g, '');
  const address = /^(?:(?<name>[^=:/@]+)=)?(?<url>(?:[a-z][\w+.-]*:\/\/|git@|symlink:|file:).+)$/i.exec(spec)?.groups;
  if (address) return fromAddress(address.url ?? '', address.name?.trim() ?? null);
  const { library, version } = /^(?<library>[^@]+?)\s*(?:@\s*(?<version>.+?))?\s*$/.exec(spec)?.groups ?? {};
  if (library === undefined || library === '' || !/\w/.test(library)) return null;
  return { library, version: pinned(version) };
}

/** `Name (>=1.2.0)`, `Name (1.2.0)`, `Name`. */
export function parseBracketed(text: string): Named | null {
  const { library, version } = /^\s*(?<library>[^()]+?)\s*(?:\((?<version>[^()]*)\))?\s*$/.exec(text)?.groups ?? {};
  return library === undefined || !/\w/.test(library) ? null : { library, version: pinned(version) };
}

/** Null for no version and for 'any'. */
export function pinned(version: string | undefined | null): string | null {
  const text = version?.trim() ?? '';
  return text === '' || text === '*' || text.toLowerCase() === 'latest' ? null : text;
}

function fromAddress(url: string, name: string | null): Named | null {
  const [path = '', tag] = url.split('#');
  const last =
    path
      .replace(/[?].*$/, '')
      .replace(/\/+$/, '')
      .replace(/\.git$/, '')
      .split(/[/:\\]/)
      .at(-1) ?? '';
  const [library = '', at] = last.split('@');
  const found = name ?? library.replace(/\.(zip|tar\.gz|whl)$/, '').replace(/\.git$/, '');
  return found === '' ? null : { library: found, version: pinned(tag ?? at) };
}
