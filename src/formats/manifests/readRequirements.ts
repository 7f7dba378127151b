import type { Dependency } from '#core/code.ts';
import type { Problem } from '#core/problem.ts';
import { type SourceText, spanOfLine } from '#core/sourceText.ts';
import type { Manifest } from './manifest.ts';
import { placeWithoutSecrets } from './placeWithoutSecrets.ts';
import { dependencyAt, type Named, parseLibrarySpec, pinned } from './requirement.ts';

/** A Python requirements list: one requirement a line (PEP 508), options and comments passed over. */
export function readRequirements(source: SourceText): Manifest {
  const dependencies: Dependency[] = [];
  const problems: Problem[] = [];
  let continued = false;
  for (let line = 1; line <= source.lineStarts.length; line++) {
    const [start, end] = spanOfLine(source, line);
    const text = source.text.slice(start, end);
    const isRest = continued;
    continued = text.endsWith('\\');
    const content = text
      .replace(/(^|\s)#.*$/, '')
      .replace(/\\$/, '')
      .trimEnd();
    const from = content.length - content.trimStart().length;
    // The rest of a continued line holds hashes and options.
    if (isRest || from === content.length) continue;
    const editable = /^\s*(?:-e|--editable)\s+/.exec(content)?.[0].length ?? 0;
    if (editable === 0 && content.trimStart().startsWith('-')) continue;
    const span = [start + Math.max(from, editable), start + content.length] as const;
    const dependency = dependencyAt(source, span, parsePythonRequirement);
    if (dependency) dependencies.push(dependency);
    else problems.push(unreadable(source, span));
  }
  return { dependencies, board: null, settings: {}, problems };
}

/**
 * `name[extra] >=1.2, <2 ; marker`, or `name @ address`. The version is kept as written. Null for other text.
 * PEP 508 for the form, PEP 440 for the versions.
 */
export function parsePythonRequirement(text: string): Named | null {
  const requirement = text
    .replace(/\s+--[\w-]+[=\s].*$/, '')
    .replace(/\s*;.*$/, '')
    .trim();
  const egg = /[#&]egg=([\w.-]+)/.exec(text)?.[1];
  if (/^([a-z][\w+.-]*:\/\/|git@|\.{0,2}\/)/i.test(requirement)) {
    const named = parseLibrarySpec(requirement.replace(/#egg=.*$/, ''));
    return named && egg !== undefined ? { ...named, library: egg } : named;
  }
  const { name, rest = '' } =
    /^(?<name>[A-Za-z\d](?:[\w.-]*[A-Za-z\d])?)\s*(?:\[[^\]]*\])?\s*(?<rest>.*)$/.exec(requirement)?.groups ?? {};
  if (name === undefined) return null;
  if (rest.startsWith('@')) return { library: name, version: parseLibrarySpec(rest.slice(1))?.version ?? null };
  const versions = rest.replace(/^\((.*)\)$/, '$1').trim();
  if (versions !== '' && !/^((~=|===?|!=|<=|>=|<|>)\s*[\w.*+!-]+\s*,?\s*)+$/.test(versions)) return null;
  return { library: name, version: pinned(versions) };
}

function unreadable(source: SourceText, span: readonly [number, number]): Problem {
  return {
    place: placeWithoutSecrets(source, span),
    message: 'This line is no requirement: a name was expected, with a version such as ==1.2.3 where one is wanted.',
    remedy: 'Correct the line, or begin it with # to make it a comment.',
  };
}
