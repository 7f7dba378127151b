import { remember } from '#core/remember.ts';
import words from './countWords.json';
import { parseNumber } from './decimal.ts';

/** A time in running English, in minutes; `from` and `to` are UTF-16 code units of the text. */
export interface Duration {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  /** More than `least` for a range. */
  readonly most: number;
  /** What the longer time is rounded to, by the way it is written. */
  readonly grain: number;
}

const small: ReadonlyMap<string, number> = new Map(Object.entries({ ...words.teens, ...words.ones }));
const tens: ReadonlyMap<string, number> = new Map(Object.entries(words.tens));
const ones: ReadonlyMap<string, number> = new Map(Object.entries(words.ones));
const fractions: ReadonlyMap<string, number> = new Map([
  ['½', 0.5],
  ['¼', 0.25],
  ['¾', 0.75],
]);

const anyOf = (map: ReadonlyMap<string, number>) => [...map.keys()].join('|');
const number = [
  '\\d+(?:[.,]\\d+)?\\s?[½¼¾]?',
  '[½¼¾]',
  `(?:${anyOf(tens)})(?:[-\\s](?:${anyOf(ones)}))?`,
  anyOf(small),
  'half(?:\\s+an?)?',
  '(?:an?|one|three)[-\\s]quarters?(?:\\s+of)?\\s+an',
  'an?\\s+(?:half|couple\\s+of)',
  'an?',
].join('|');
const rest = '(?:\\s+and\\s+(?:an?|one)\\s+(?<REST>half|quarter))?';
const hour = 'hours?|hrs?|h';
const minute = 'minutes?|mins?|min';
const alone = '(?<![\\p{L}\\p{N}.,:/])';
const ends = '(?![\\p{L}\\p{N}])';
const withRest = (name: string) => rest.replace('REST', name);

const single = new RegExp(
  `${alone}(?<n>${number})${withRest('before')}[-\\s]*(?:` +
    `(?<hour>${hour})(?:${ends}${withRest('after')}(?:(?:\\s+and\\s+|,?\\s*)(?<more>${number})[-\\s]*(?:${minute})${ends})?|(?:\\s?(?<clock>\\d\\d)${ends}(?![.,]\\d|\\s*\\p{L})))` +
    `|(?<minute>${minute})${ends})`,
  'giu',
);
const lead = new RegExp(
  `${alone}(?:between\\s+(?<between>${number})${withRest('betweenRest')}(?:[-\\s]*(?<betweenUnit>${hour}|${minute}))?\\s+and` +
    `|(?<n>${number})${withRest('before')}(?:[-\\s]*(?<unit>${hour}|${minute})${withRest('after')})?\\s*(?:to|or|[-–—]))\\s*$`,
  'iu',
);

/** The lower end of a range is no longer, with its unit. */
const longestLead = 60;

/**
 * Hours and minutes as people write them: `two and a half hours`, `half an hour`, `4–5 h`, `one hour and 25 minutes`,
 * `a 90-minute build`. Days and evenings are left out, since nobody says how many hours they have.
 */
export const findDurations = remember((text): readonly Duration[] => {
  const found: Duration[] = [];
  for (const match of text.matchAll(single)) {
    const one = readSingle(match.groups ?? {});
    if (one === null) continue;
    const to = match.index + match[0].length;
    const start = Math.max(0, match.index - longestLead);
    const before = lead.exec(text.slice(start, match.index));
    const least = before === null ? null : readLead(before.groups ?? {}, match.groups?.hour !== undefined);
    if (before === null || least === null || least.minutes >= one.minutes) {
      found.push({ from: match.index, to, least: one.minutes, most: one.minutes, grain: one.grain });
      continue;
    }
    const from = start + before.index;
    while ((found.at(-1)?.to ?? 0) > from) found.pop();
    found.push({ from, to, least: least.minutes, most: one.minutes, grain: one.grain });
  }
  return found;
});

type Groups = Readonly<Record<string, string | undefined>>;

interface Single {
  readonly minutes: number;
  readonly grain: number;
}

function readSingle({ n = '', before, after, hour: hours, more, clock }: Groups): Single | null {
  const count = numberOf(n);
  if (count === null) return null;
  const units = count + shareOf(before) + shareOf(after);
  if (hours === undefined) return { minutes: units, grain: grainOf(units) };
  const extra = more === undefined ? Number(clock ?? 0) : numberOf(more);
  if (extra === null) return null;
  const minutes = units * 60 + extra;
  return { minutes, grain: minutes % 60 === 0 ? 60 : grainOf(minutes) };
}

/** The lower end of a range; without a unit of its own it has that of the upper end. */
function readLead(groups: Groups, inHours: boolean): { readonly minutes: number } | null {
  const count = numberOf(groups.between ?? groups.n ?? '');
  if (count === null) return null;
  const unit = groups.betweenUnit ?? groups.unit;
  const size = (unit === undefined ? inHours : /^h/iu.test(unit)) ? 60 : 1;
  return { minutes: (count + shareOf(groups.betweenRest ?? groups.before) + shareOf(groups.after)) * size };
}

function shareOf(rest: string | undefined): number {
  return rest === undefined ? 0 : /half/iu.test(rest) ? 0.5 : 0.25;
}

function numberOf(text: string): number | null {
  const plain = text.trim().toLowerCase();
  const sign = fractions.get(plain.slice(-1));
  if (sign !== undefined) {
    const whole = plain.slice(0, -1).trim();
    return whole === '' ? sign : (parseNumber(whole) ?? Number.NaN) + sign;
  }
  if (/^\d/u.test(plain)) return parseNumber(plain);
  if (/\bquarters?\b/u.test(plain)) return plain.startsWith('three') ? 0.75 : 0.25;
  if (/\bhalf\b/u.test(plain)) return 0.5;
  if (/\bcouple\b/u.test(plain)) return 2;
  if (/^an?$/u.test(plain)) return 1;
  const [first = '', second] = plain.split(/[-\s]/u);
  return small.get(first) ?? (tens.get(first) ?? 0) + (ones.get(second ?? '') ?? 0);
}

/** What people round minutes to: the longest of half an hour, a quarter, ten, five and one that goes into them. */
export function grainOf(minutes: number): number {
  return [30, 15, 10, 5].find((grain) => minutes % grain === 0) ?? 1;
}
