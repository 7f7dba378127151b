import type { Hash, Path } from '#core/place.ts';
import type { SourceText } from '#core/sourceText.ts';

/** Texts read before, as long as a build still holds them. */
export interface KeptTexts {
  get(file: Path, hash: Hash): SourceText | null;
  add(source: SourceText): void;
}

/** Entries after which those whose text is gone are swept out. */
const sweepAt = 5000;

/** Keeps texts without holding on to them. */
export function keptTexts(): KeptTexts {
  const known = new Map<string, WeakRef<SourceText>>();
  return {
    get: (file, hash) => known.get(`${hash} ${file}`)?.deref() ?? null,
    add(source) {
      if (known.size >= sweepAt) {
        for (const [key, text] of known) if (text.deref() === undefined) known.delete(key);
      }
      known.set(`${source.hash} ${source.file}`, new WeakRef(source));
    },
  };
}
