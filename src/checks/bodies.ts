import table from './knowledge/chipSizes.json';

/** The body of a part as a list names it. */
export interface Body {
  /** As written, such as `0603` or `DIP-8`. */
  readonly words: string;
  /** Metric codes of the chips that it may mean; empty for other bodies. */
  readonly chips: readonly string[];
  /** Square tenths of a millimetre, inch codes being taken as such; null for other bodies. */
  readonly area: number | null;
  readonly mounting: 'through-hole' | 'surface-mount';
  /** Pins, where the family is told apart by them. */
  readonly pins: number | null;
}

const metricOf = table.metricOf as Readonly<Record<string, string>>;
const metric = new Set(Object.values(metricOf));

/** Codes that mean a body in both systems. */
export const twinCodes: ReadonlySet<string> = new Set(
  [...Object.keys(metricOf), '0201'].filter((code) => metric.has(code)),
);
/** Codes in inches that are none in the other system, and the other way round. */
export const inchCodes: ReadonlySet<string> = new Set(Object.keys(metricOf).filter((code) => !metric.has(code)));
export const metricCodes: ReadonlySet<string> = new Set([...metric].filter((code) => metricOf[code] === undefined));

const codes = [...new Set([...Object.keys(metricOf), ...metric])].sort((a, b) => b.length - a.length).join('|');
const pair = new RegExp(`(?<!\\d)(${codes})[_ /(]+(${codes})[ _]?metric`, 'iu');
const alone = new RegExp(
  `(?<![\\p{L}\\d.,/-])(?:SMD|SMT|R|C|L|LED|D)?_?(${codes})(?![\\p{L}\\d]|[.,/]\\d| ?(?:pcs|pieces|mm|K\\b))`,
  'u',
);
const inNumber = new RegExp(`^[A-Z]{1,5}(${codes})[A-Z-]`, 'u');

/** The bodies that the words of a package, a footprint, a description or a part number name. */
export function bodiesIn(words: string, where: string): Body[] {
  if (where === 'part number') return chipOf(inNumber.exec(words)?.[1]);
  const both = pair.exec(words);
  if (both !== null) return chipOf(both[2], both[2]);
  const chip = alone.exec(words);
  // A bare number such as 2512 may count something in a description.
  if (chip !== null && (where !== 'description' || isSizeHere(words, chip)))
    return chipOf(chip[1], systemBehind(words, chip));
  return outlineIn(words);
}

function isSizeHere(words: string, match: RegExpExecArray): boolean {
  const rest = words.slice(0, match.index) + words.slice(match.index + match[0].length);
  return !/\b(?:bag|pack|box|pieces|pcs)\b/iu.test(rest);
}

function systemBehind(words: string, match: RegExpExecArray): string | undefined {
  const [behind] = /^\W{0,2}(?:metric|inch|imperial)\b/iu.exec(words.slice(match.index + match[0].length)) ?? [];
  if (behind === undefined) return undefined;
  return /metric/iu.test(behind) ? match[1] : metricOf[match[1] ?? ''];
}

function chipOf(code: string | undefined, sure?: string): Body[] {
  if (code === undefined) return [];
  const inch = metricOf[code];
  const chips = sure === undefined ? [inch, metric.has(code) ? code : undefined] : [sure];
  const sizes = chips.filter((chip) => chip !== undefined);
  const [length = 0, width = 0] = [Number(sizes[0]?.slice(0, 2)), Number(sizes[0]?.slice(2))];
  return [{ words: code, chips: sizes, area: length * width, mounting: 'surface-mount', pins: null }];
}

const families = Object.entries(table.families).flatMap(([mounting, names]) =>
  names.map((name) => [name, mounting as Body['mounting']] as const),
);
const outline = new RegExp(
  `(?<![\\p{L}\\d])(${families
    .map(([name]) => name)
    .sort((a, b) => b.length - a.length)
    .join('|')})(?:[-_ ]?(\\d{1,3}))?(?![\\p{L}\\d])`,
  'u',
);

function outlineIn(words: string): Body[] {
  const match = outline.exec(words.replace(/_/gu, ' '));
  const mounting = families.find(([name]) => name === match?.[1])?.[1];
  // 'SO' without a number is a word of another language.
  if (match === null || mounting === undefined || (match[1] === 'SO' && match[2] === undefined)) return [];
  const pins = match[2] !== undefined && table.counted.includes(match[1] ?? '') ? Number(match[2]) : null;
  return [{ words: match[0], chips: [], area: null, mounting, pins }];
}

/** Whether two names may mean one body. */
export function sameBody(a: Body, b: Body): boolean {
  if (a.chips.length > 0 && b.chips.length > 0) return a.chips.some((chip) => b.chips.includes(chip));
  if (a.mounting !== b.mounting) return false;
  return a.pins === null || b.pins === null || a.pins === b.pins;
}
