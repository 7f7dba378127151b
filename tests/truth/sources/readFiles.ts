import type { SourceFacts } from '../../../src/core/code.ts';
import { lineStartsOf, type SourceText } from '../../../src/core/sourceText.ts';
import { languageOf } from '../../../src/formats/sources/languageOf.ts';
import { readSources } from '../../../src/formats/sources/readSources.ts';
import { openGrammars } from '../../../src/outside/grammars/openGrammars.ts';

const grammars = openGrammars();

/** Reads sources by path, as one build, through the real grammars. Other files are only there. */
export async function readFiles(texts: Readonly<Record<string, string>>, others: readonly string[] = []) {
  const parsed = [];
  for (const [file, text] of Object.entries(texts)) {
    const language = languageOf(file, text);
    if (language !== null)
      parsed.push({ source: sourceOf(file, text), language, tree: await grammars.parse(language, text) });
  }
  const there = [...Object.keys(texts), ...others];
  return readSources(parsed, {
    fileExists: (path) => there.find((one) => one === path) ?? null,
    fileNearly: (path) => there.find((one) => one.toLowerCase() === path.toLowerCase()) ?? null,
  });
}

export function sourceOf(file: string, text: string): SourceText {
  return { file, text, encoding: 'utf-8', bom: false, hash: '', lineStarts: lineStartsOf(text) };
}

/** Pins as `name pin uses group`, a dash where there is none. */
export async function pinsIn(file: string, text: string): Promise<string[]> {
  const { sources } = await readFiles({ [file]: text });
  return sources.flatMap(({ pins }) => pins.map(describePin));
}

export function describePin({ name, pin, uses, group }: SourceFacts['pins'][number]): string {
  return `${name ?? '-'} ${pin} ${uses.join('+')} ${group ?? '-'}`;
}
