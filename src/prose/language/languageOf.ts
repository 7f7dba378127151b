import type { Build } from '#core/build.ts';
import type { GuideLanguage } from '#core/facts.ts';
import { spokenTexts } from '../mentions/spokenTexts.ts';
import table from './languages.json';

/** The language of the guide's prose: as the settings state it, else as its function words tell. */
export function languageOf(build: Build): GuideLanguage {
  const { language, places } = build.settings;
  if (places.language !== undefined && language.trim() !== '') return { code: language.trim(), known: 'stated' };
  const prose = spokenTexts(build)
    .map(({ words }) => words.replace(/https?:\S+/giu, ' '))
    .join('\n')
    .toLowerCase();
  const code = scriptOf(prose) ?? languageOfWords(prose.match(/\p{L}+/gu) ?? []);
  return code === null ? { code: null, known: 'unknown' } : { code, known: 'read' };
}

/** The name of the guide's language where it is known and not English, such as 'German'; else null. */
export function otherLanguage({ code }: GuideLanguage): string | null {
  if (code === null || /^en(?![\p{L}\p{N}])|^english$/iu.test(code)) return null;
  const [tag = ''] = code.toLowerCase().split(/[-_]/);
  const script = table.scripts.find((one) => one.code === code || one.code === tag);
  return languages.find((one) => one.code === tag)?.name ?? script?.name ?? `‘${code}’`;
}

const languages = Object.entries(table.languages).map(([code, { name, words }]) => ({
  code,
  name,
  words: new Set(words.split(' ')),
}));
const scripts = table.scripts.map(({ script, code }) => ({ code, letter: new RegExp(`\\p{Script=${script}}`, 'gu') }));

/** Fewer words than these tell no language: such a guide is read by its labels. */
const fewestWords = 40;
/** Letters that stand for about as many words, in scripts without blanks too. */
const fewestLetters = 120;
/** How many times as often as another language's a language's words must stand there. */
const lead = 1.5;

/** The script of most letters, where it is not the Latin one. */
function scriptOf(prose: string): string | null {
  const all = prose.match(/\p{L}/gu)?.length ?? 0;
  const others = scripts.map(({ code, letter }) => ({ code, n: prose.match(letter)?.length ?? 0 }));
  const n = others.reduce((sum, one) => sum + one.n, 0);
  if (n < fewestLetters || n * 2 < all) return null;
  // Japanese has many Han letters beside its own.
  return others.find((one) => one.n * 10 >= n)?.code ?? null;
}

/** English and what is not must stand clearly apart; of two others, the more likely is named. */
function languageOfWords(words: readonly string[]): string | null {
  if (words.length < fewestWords) return null;
  const counted = languages.map((one) => ({ code: one.code, n: words.filter((word) => one.words.has(word)).length }));
  const english = counted.find(({ code }) => code === 'en')?.n ?? 0;
  const other = counted.filter(({ code }) => code !== 'en').reduce((best, one) => (one.n > best.n ? one : best));
  const fewest = Math.max(4, words.length * 0.06);
  if (english >= fewest && english >= other.n * lead) return 'en';
  return other.n >= fewest && other.n >= english * lead ? other.code : null;
}
