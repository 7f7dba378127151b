import type { Settings } from '#core/settings.ts';
import { formatMinutes } from './formatMinutes.ts';
import type { PartRow, StepBlock, SummaryBlock, Words } from './guide.ts';
import { sumPrices } from './sumPrices.ts';

type Sentence = SummaryBlock['sentences'][number];

/** What a reader wants to know first, each in a sentence that says what it stands on; nothing is guessed. */
export function composeSummary(
  settings: Settings,
  purpose: readonly Words[] | null,
  steps: readonly StepBlock[],
  parts: readonly PartRow[],
): Sentence[] {
  const sentences: [Sentence['about'], string | null][] = [
    ['skills', skillsSentence(settings.skills)],
    ['time', timeSentence(steps)],
    ['cost', costSentence(parts)],
    ['supply', settings.supply && `It runs from ${withStop(settings.supply)}`],
    ['status', settings.status && statusSentence(settings.status)],
  ];
  return [
    ...(purpose ? [{ about: 'purpose' as const, words: purpose }] : []),
    ...sentences.flatMap(([about, text]) => (text ? [{ about, words: [{ kind: 'text' as const, value: text }] }] : [])),
  ];
}

function skillsSentence(skills: readonly string[]): string | null {
  return skills.length === 0 ? null : `It asks for ${withStop(listed(skills))}`;
}

function timeSentence(steps: readonly StepBlock[]): string | null {
  const told = steps.flatMap((step) => step.minutes ?? []);
  if (told.length === 0) return null;
  const hands = told.reduce((sum, minutes) => sum + minutes.hands, 0);
  const wait = told.reduce((sum, minutes) => sum + minutes.wait, 0);
  const work = `${formatMinutes(hands)} of work${wait > 0 ? ` and ${formatMinutes(wait)} of waiting` : ''}`;
  return told.length === steps.length
    ? `It takes about ${work}.`
    : `${told.length} of its ${steps.length} steps say how long they take: ${work} together.`;
}

function costSentence(parts: readonly PartRow[]): string | null {
  const sum = sumPrices(parts);
  if (sum.priced === 0) return null;
  const money = listed(
    sum.totals.map(({ amount, currency }) => `${amount.toFixed(2)}${currency ? ` ${currency}` : ''}`),
  );
  const basis =
    sum.priced === sum.rows
      ? 'the prices in the parts list'
      : `the ${sum.priced} of ${sum.rows} parts that have a price`;
  const dates = sum.latest === null ? '' : `, last looked up ${sum.latest}`;
  return `The parts cost about ${money} by ${basis}${dates}; carriage, tools and full packs are not counted.`;
}

function statusSentence(status: string): string {
  const times = /^built\s*[×x*]?\s*(\d+)/i.exec(status.trim())?.[1];
  if (times === '1') return 'It has been built once.';
  if (times !== undefined) return `It has been built ${times} times.`;
  switch (status.trim().toLowerCase()) {
    case 'idea':
      return 'It is an idea: nobody has built it yet.';
    case 'prototype':
      return 'It is a prototype, and may still change.';
    case 'replicated':
      return 'Others have built it again from this guide.';
    default:
      return `Where it stands: ${withStop(status)}`;
  }
}

/** `a`, `a and b`, `a, b and c`. */
function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

function withStop(text: string): string {
  return /[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`;
}
