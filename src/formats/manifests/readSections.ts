import type { Dependency } from '#core/code.ts';
import type { Span } from '#core/place.ts';
import type { Problem } from '#core/problem.ts';
import { type SourceText, spanOfLine } from '#core/sourceText.ts';
import type { Manifest } from './manifest.ts';
import { placeWithoutSecrets } from './placeWithoutSecrets.ts';
import { dependencyAt, parseLibrarySpec } from './requirement.ts';

/** Keys that must be the same to build the same again. Others, such as flags, can hold credentials. */
const kept =
  /^(platform|platform_packages|board|framework|board_build\.[\w.]+|board_upload\.[\w.]+|upload_speed|upload_protocol|monitor_speed|lib_ldf_mode|lib_compat_mode|debug_tool|build_type)$/;

/**
 * A build tool's settings in sections: `[env:name]` with multi-line `lib_deps`, comments after `;` or `#`,
 * `extends`, and references such as `${common.lib_deps}`.
 */
export function readSections(source: SourceText): Manifest {
  const sections = sectionsOf(source);
  const environments = [...sections.keys()].filter((name) => name.startsWith('env:'));
  const problems: Problem[] = [];
  const dependencies = new Map<number, Dependency>();
  for (const name of environments.length > 0 ? environments : [...sections.keys()]) {
    for (const piece of piecesOf('lib_deps', name, sections, source, problems)) {
      const dependency = dependencyAt(source, piece, parseLibrarySpec);
      if (dependency) dependencies.set(piece[0], dependency);
    }
  }
  const settings = sharedSettings(builtEnvironments(environments, sections, source), sections, source);
  return {
    dependencies: [...dependencies.values()].sort((a, b) => a.place.span[0] - b.place.span[0]),
    board: settings.board ?? null,
    settings,
    problems,
  };
}

/** Keys of a section with the pieces of their values: one a line, or one between commas. */
type Section = Map<string, Span[]>;

function sectionsOf(source: SourceText): Map<string, Section> {
  const sections = new Map<string, Section>();
  let section: Section = new Map();
  let pieces: Span[] | null = null;
  for (let line = 1; line <= source.lineStarts.length; line++) {
    const [start, end] = spanOfLine(source, line);
    const text = source.text.slice(start, end);
    const content = withoutComment(text);
    const title = /^\s*\[([^\]]+)\]/.exec(content)?.[1];
    if (title !== undefined) {
      section = sections.get(title.trim()) ?? new Map();
      sections.set(title.trim(), section);
      pieces = null;
      continue;
    }
    const key = /^(?<key>[\w.:-]+)\s*[=:]/.exec(content);
    if (key) {
      pieces = [];
      section.set(key.groups?.key ?? '', pieces);
      pieces.push(...split(content, key[0].length, start));
    } else if (/^\s/.test(content)) pieces?.push(...split(content, 0, start));
  }
  return sections;
}

/** A `;` or `#` begins a comment at the start of a line, a `;` after a blank as well. */
function withoutComment(line: string): string {
  return /^\s*[;#]/.test(line) ? '' : line.replace(/\s;.*$/, '');
}

function split(content: string, from: number, offset: number): Span[] {
  const spans: Span[] = [];
  for (const match of content.slice(from).matchAll(/[^,\s](?:[^,]*[^,\s])?/g)) {
    const start = offset + from + match.index;
    spans.push([start, start + match[0].length]);
  }
  return spans;
}

/** The pieces of a key's value, from the section itself, what it extends, or the section common to all. */
function piecesOf(
  key: string,
  name: string,
  sections: ReadonlyMap<string, Section>,
  source: SourceText,
  problems: Problem[],
  trail: readonly string[] = [],
): Span[] {
  if (trail.includes(`${name}.${key}`) || trail.length > 20) return [];
  const section = sections.get(name);
  const next = [...trail, `${name}.${key}`];
  const own = section?.get(key);
  if (!own) {
    const parents = section?.get('extends')?.map(([start, end]) => source.text.slice(start, end).trim()) ?? [];
    if (name.startsWith('env:') && sections.has('env')) parents.push('env');
    for (const parent of parents) {
      const found = piecesOf(key, parent, sections, source, problems, next);
      if (found.length > 0) return found;
    }
    return [];
  }
  return own.flatMap((span) => {
    const reference = /^\$\{(?<section>[^}]+)\.(?<key>[\w]+)\}$/.exec(
      source.text.slice(span[0], span[1]).trim(),
    )?.groups;
    if (!reference) return [span];
    const from = reference.section === 'this' ? name : (reference.section ?? '');
    if (!sections.has(from) && !['sysenv', 'platformio'].includes(from))
      problems.push(missingSection(source, span, from));
    return piecesOf(reference.key ?? '', from, sections, source, problems, next);
  });
}

function settingsOf(name: string, sections: ReadonlyMap<string, Section>, source: SourceText): Record<string, string> {
  const keys = new Set(
    [...sections.values()].flatMap((section) => [...section.keys()]).filter((key) => kept.test(key)),
  );
  return Object.fromEntries(
    [...keys].flatMap((key) => {
      const pieces = piecesOf(key, name, sections, source, []);
      const text = pieces.map((span) => placeWithoutSecrets(source, span).quote).join(', ');
      return text === '' ? [] : [[key, text] as const];
    }),
  );
}

/** Settings on which all environments agree. */
function sharedSettings(
  environments: readonly string[],
  sections: ReadonlyMap<string, Section>,
  source: SourceText,
): Record<string, string> {
  const [first = {}, ...others] = environments.map((name) => settingsOf(name, sections, source));
  return Object.fromEntries(
    Object.entries(first).filter(([key, value]) => others.every((other) => other[key] === value)),
  );
}

/** The environments that are built when none is named: those given as default, or all. */
function builtEnvironments(
  environments: readonly string[],
  sections: ReadonlyMap<string, Section>,
  source: SourceText,
): readonly string[] {
  const listed = sections.get('platformio')?.get('default_envs') ?? [];
  const named = listed.map(([start, end]) => `env:${source.text.slice(start, end).trim()}`);
  const known = named.filter((name) => environments.includes(name));
  if (known.length > 0) return known;
  return environments.length > 0 || !sections.has('env') ? environments : ['env'];
}

function missingSection(source: SourceText, span: Span, section: string): Problem {
  return {
    place: placeWithoutSecrets(source, span),
    message: `This refers to a section [${section}]; the file has none of that name.`,
    remedy: `Add the section [${section}], or correct its name here.`,
  };
}
