import { remember } from '#core/remember.ts';

/**
 * Phrases of the library's tables, as searches. Blanks and hyphens are one (`hot air` finds hot-air and hotair), `*`
 * stands for any ending, `#` for a digit, a plural counts too, and ` + ` asks for all its pieces within the words.
 */
export interface Phrases {
  /** Where the longest piece of the first phrase stands that is found; null where none is. */
  find(words: string): { readonly start: number; readonly end: number } | null;
}

const nothing: Phrases = { find: () => null };
const made = new WeakMap<readonly string[], Phrases>();

/** Searches for phrases; those of one table are made once. */
export function phrasesOf(written: readonly string[]): Phrases {
  if (written.length === 0) return nothing;
  const known = made.get(written) ?? searches(written);
  made.set(written, known);
  return known;
}

function searches(written: readonly string[]): Phrases {
  const phrases = written.map((phrase) => phrase.split(' + ').map((piece) => searchFor(sourceOf(piece))));
  const any = searchFor(written.map((phrase) => sourceOf(phrase.split(' + ')[0] ?? '')).join('|'));
  return {
    find: remember((words) => {
      if (!any.test(words)) return null;
      for (const pieces of phrases) {
        const matches = pieces.map((piece) => piece.exec(words));
        if (matches.includes(null)) continue;
        const found = matches.flatMap((match) => (match === null ? [] : [match]));
        const [longest] = found.sort((a, b) => b[0].length - a[0].length);
        if (longest !== undefined) return { start: longest.index, end: longest.index + longest[0].length };
      }
      return null;
    }),
  };
}

function searchFor(source: string): RegExp {
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${source})(?:['’]?s|es)?(?![\\p{L}\\p{N}])`, 'iu');
}

function sourceOf(piece: string): string {
  return piece
    .split(/[\s-]+/)
    .map((word) =>
      word
        .replace(/[.*+?^${}()|[\]\\/]/g, (mark) => (mark === '*' ? '[\\p{L}\\p{N}]*' : `\\${mark}`))
        .replaceAll('#', '\\d'),
    )
    .join('[\\s\\u00a0\\u2011-]*');
}
