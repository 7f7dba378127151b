import type { Settings } from '#core/settings.ts';
import { sumPrices } from '#notation/sumPrices.ts';
import { formatMinutes } from './formatMinutes.ts';
import type { Minutes, PartRow, StepBlock, SummaryBlock, Words } from './guide.ts';
import { listed } from './listed.ts';
import { withStop } from './withStop.ts';

type Sentence = SummaryBlock['sentences'][number];

/** What a reader wants to know first, each in a sentence that says what it stands on; nothing is guessed. */
export function composeSummary(
  settings: Settings,
  purpose: readonly Words[] | null,
  steps: readonly StepBlock[],
  parts: readonly PartRow[],
): Sentence[] {
  const sentences: Sentence[] = [
    { about: 'purpose', words: purpose ?? [] },
    { about: 'skills', words: skillsSentence(settings.skills) },
    { about: 'time', words: timeSentence(steps) },
    { about: 'cost', words: costSentence(parts) },
    { about: 'supply', words: settings.supply ? [text(`It runs from ${withStop(settings.supply)}`)] : [] },
    { about: 'status', words: settings.status ? statusSentence(settings.status) : [] },
  ];
  return sentences.filter(({ words }) => words.length > 0);
}

/** Time and cost of the whole, where every step and every part tells its own. */
export function composeTotals(steps: readonly StepBlock[], parts: readonly PartRow[]): SummaryBlock['totals'] {
  const told = steps.flatMap((step) => step.minutes ?? []);
  const sum = sumPrices(parts);
  const [total, ...others] = sum.totals;
  const isWhole = total?.currency != null && others.length === 0 && sum.priced === sum.rows;
  return {
    minutes: told.length === steps.length && told.length > 0 ? sumOf(told) : null,
    cost: isWhole ? total : null,
  };
}

function sumOf(times: readonly Minutes[]): Minutes {
  return {
    hands: times.reduce((sum, { hands }) => sum + hands, 0),
    wait: times.reduce((sum, { wait }) => sum + wait, 0),
  };
}

function skillsSentence(skills: readonly string[]): Words[] {
  return skills.length === 0 ? [] : [text(`It asks for these skills: ${withStop(listed(skills))}`)];
}

function timeSentence(steps: readonly StepBlock[]): Words[] {
  const told = steps.flatMap((step) => step.minutes ?? []);
  if (told.length === 0) return [];
  const { hands, wait } = sumOf(told);
  const work = [figure(formatMinutes(hands)), text(' of work')];
  if (wait > 0) work.push(text(' and '), figure(formatMinutes(wait)), text(' of waiting'));
  return told.length === steps.length
    ? [text('It takes about '), ...work, text('.')]
    : [text(`${told.length} of its ${steps.length} steps say how long they take: `), ...work, text(' together.')];
}

function costSentence(parts: readonly PartRow[]): Words[] {
  const sum = sumPrices(parts);
  if (sum.priced === 0) return [];
  const money = sum.totals.flatMap(({ amount, currency }, i) => [
    ...(i > 0 ? [text(' and ')] : []),
    figure(currency === null ? amount.toFixed(2) : `${amount.toFixed(2)} ${currency}`),
  ]);
  const basis =
    sum.priced === sum.rows
      ? 'by the prices in the parts list'
      : `by the ${sum.priced} of ${sum.rows} parts that have a price`;
  const dates = sum.latest === null ? '' : `, last looked up ${sum.latest}`;
  return [
    text('The parts cost about '),
    ...money,
    text(` ${basis}${dates}; carriage, tools and full packs are not counted.`),
  ];
}

function statusSentence(status: string): Words[] {
  const times = /^built\s*[×x*]?\s*(\d+)/i.exec(status.trim())?.[1];
  if (times === '1') return [text('It has been built once.')];
  if (times === '2') return [text('It has been built twice.')];
  if (times !== undefined) return [text('It has been built '), figure(`${times} times`), text('.')];
  switch (status.trim().toLowerCase()) {
    case 'idea':
      return [text('It is an idea: nobody has built it yet.')];
    case 'prototype':
      return [text('It is a prototype, and may still change.')];
    case 'replicated':
      return [text('Others have built it again from this guide.')];
    default:
      return [text(`Where it stands: ${withStop(status)}`)];
  }
}

function text(value: string): Words {
  return { kind: 'text', value };
}

/** A number that readers look for. */
function figure(value: string): Words {
  return { kind: 'strong', children: [text(value)] };
}
