import type { Dependency } from '#core/code.ts';
import { type SourceText, spanOfLine } from '#core/sourceText.ts';
import type { Manifest } from './manifest.ts';
import { parsePythonRequirement } from './readRequirements.ts';
import { dependencyAt } from './requirement.ts';

/** A Python project's own description: `dependencies` and `requires-python` of the section `[project]`. */
export function readProject(source: SourceText): Manifest {
  const dependencies: Dependency[] = [];
  const settings: Record<string, string> = {};
  let section = '';
  let inList = false;
  for (let line = 1; line <= source.lineStarts.length; line++) {
    const [start, end] = spanOfLine(source, line);
    const text = source.text.slice(start, end);
    const title = inList ? undefined : /^\s*\[+([^\]]+)\]+\s*(?:#.*)?$/.exec(text)?.[1];
    if (title !== undefined) section = title.trim();
    if (section !== 'project') continue;
    const python = /^\s*requires-python\s*=\s*["']([^"']*)["']/.exec(text)?.[1];
    if (python !== undefined && !inList) settings['requires-python'] = python;
    const opening = inList ? 0 : (/^\s*dependencies\s*=\s*\[/.exec(text)?.[0].length ?? -1);
    if (opening < 0) continue;
    const list = readStrings(text, opening);
    for (const [from, to] of list.strings) {
      const dependency = dependencyAt(source, [start + from, start + to], parsePythonRequirement);
      if (dependency) dependencies.push(dependency);
    }
    inList = !list.closed;
  }
  return { dependencies, board: null, settings, problems: [] };
}

/** Spans of the texts in quotes on a line, and whether the list ends there. */
function readStrings(line: string, from: number): { strings: [number, number][]; closed: boolean } {
  const strings: [number, number][] = [];
  for (const match of line.slice(from).matchAll(/"(?<double>[^"]*)"|'(?<single>[^']*)'|(?<close>\])|(?<comment>#)/g)) {
    if (match.groups?.comment !== undefined) break;
    if (match.groups?.close !== undefined) return { strings, closed: true };
    strings.push([from + match.index + 1, from + match.index + match[0].length - 1]);
  }
  return { strings, closed: false };
}
