import { declared } from '#core/claim.ts';
import type { WrittenFact } from '#core/step.ts';
import { findDurations } from '#notation/findDurations.ts';
import type { Reading } from './reading.ts';
import words from './timeWords.json';

export interface Minutes {
  readonly hands: number;
  readonly wait: number;
}

const minutesOf = new Map(
  Object.entries({ 1440: words.day, 60: words.hour, 1: words.minute, [1 / 60]: words.second }).flatMap(
    ([minutes, spellings]) => spellings.map((spelling) => [spelling, Number(minutes)] as const),
  ),
);
const waits = new RegExp(`(?<!\\p{L})(?:${words.wait.join('|')})`, 'u');
const number = '(\\d+(?:[.,]\\d+)?|½)';
const span = new RegExp(`${number}(?:\\s*(?:–|-|to|bis|à)\\s*${number})?\\s*(\\p{L}+)(?!\\p{N})`, 'gu');
const between = /[+;&]|,\s|\band\b(?!\s+(?:an?|one)\s+(?:half|quarter)\b)|\bthen\b|\bplus\b|\bund\b/u;
const clock = /(?<![\d:])(\d{1,2}):(\d{2})\s*(?:h\b)?/gu;

/** `15 min`, `1 h 20 min`, `half an hour`, `10 min + 2 h wait`. Of a range the longer time counts. */
export function readMinutes(fact: WrittenFact): Reading<Minutes> {
  let hands = 0;
  let wait = 0;
  let isRead = true;
  for (const part of fact.value.toLowerCase().split(between)) {
    if (part.trim() === '') continue;
    const minutes = durationOf(inMinutes(part));
    if (minutes === null) isRead = false;
    else if (waits.test(part)) wait += minutes;
    else hands += minutes;
  }
  if (isRead && hands + wait > 0) return { claims: [declared({ hands, wait }, fact.place)], problems: [] };
  return {
    claims: [],
    problems: [
      {
        place: fact.place,
        message: `'${fact.value}' cannot be read as a time. Expected hours and minutes, such as 1 h 20 min or 10 min + 2 h wait.`,
        remedy: 'Write numbers with units, and name waiting apart with the word wait.',
      },
    ],
  };
}

/** The same with times that are spelled out in minutes. */
function inMinutes(value: string): string {
  let text = '';
  let at = 0;
  for (const { from, to, most } of findDurations(value)) {
    text += `${value.slice(at, from)}${most} min`;
    at = to;
  }
  return text + value.slice(at);
}

/** Minutes in one stretch of time; null where there is no number with a unit of time. */
function durationOf(text: string): number | null {
  let minutes: number | null = null;
  const rest = text.replace(clock, (_, hours, more) => {
    minutes = (minutes ?? 0) + Number(hours) * 60 + Number(more);
    return ' ';
  });
  for (const [, first = '', last, unit = ''] of rest.matchAll(span)) {
    const size = minutesOf.get(unit);
    if (size === undefined) return null;
    minutes = (minutes ?? 0) + numberOf(last ?? first) * size;
  }
  return minutes;
}

function numberOf(text: string): number {
  return text === '½' ? 0.5 : Number(text.replace(',', '.'));
}
