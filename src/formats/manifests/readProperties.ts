import type { Dependency } from '#core/code.ts';
import { type SourceText, spanOfLine } from '#core/sourceText.ts';
import type { Manifest } from './manifest.ts';
import { dependencyAt, parseBracketed } from './requirement.ts';

const kept = new Set(['name', 'version', 'architectures']);

/** A library's own properties: `key=value` lines, with `depends=A (>=1.2.0), B`. */
export function readProperties(source: SourceText): Manifest {
  const dependencies: Dependency[] = [];
  const settings: Record<string, string> = {};
  for (let line = 1; line <= source.lineStarts.length; line++) {
    const [start, end] = spanOfLine(source, line);
    const match = /^(?<key>\w+)\s*=\s*(?<value>.*?)\s*$/d.exec(source.text.slice(start, end));
    const { key = '', value = '' } = match?.groups ?? {};
    if (kept.has(key) && value !== '') settings[key] = value;
    if (key !== 'depends') continue;
    const [from = 0] = match?.indices?.groups?.value ?? [];
    for (const entry of value.matchAll(/[^,\s](?:[^,]*[^,\s])?/g)) {
      const at = start + from + entry.index;
      const dependency = dependencyAt(source, [at, at + entry[0].length], parseBracketed);
      if (dependency) dependencies.push(dependency);
    }
  }
  return { dependencies, board: null, settings, problems: [] };
}
