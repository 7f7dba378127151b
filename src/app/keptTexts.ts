import type { Hash, Path } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';

/** Texts read before; what was read out of them is remembered with them. */
export interface KeptTexts {
  get(file: Path, hash: Hash): SourceText | null;
  add(source: SourceText): void;
}

/** Keeps the texts that were last asked for, about `most` to twice as many UTF-16 code units of them. */
export function keptTexts(most = 4_000_000): KeptTexts {
  let recent = new Map<string, SourceText>();
  let older = new Map<string, SourceText>();
  let held = 0;
  const keep = (key: string, source: SourceText) => {
    if (held >= most) {
      older = recent;
      recent = new Map();
      held = 0;
    }
    recent.set(key, source);
    held += source.text.length;
  };
  return {
    get(file, hash) {
      const key = keyOf(file, hash);
      const known = recent.get(key) ?? older.get(key) ?? null;
      if (known !== null && !recent.has(key)) keep(key, known);
      return known;
    },
    add: (source) => keep(keyOf(source.file, source.hash), source),
  };
}

function keyOf(file: Path, hash: Hash): string {
  return `${hash} ${file}`;
}
