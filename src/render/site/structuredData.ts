import type { Money } from '#core/quantity.ts';
import { withInner } from '#guide/everyBlock.ts';
import type { Minutes, PictureBlock, StepBlock } from '#guide/guide.ts';
import { plainWords } from '#guide/plainWords.ts';
import { fragmentUrl, relativeUrl } from '../shared/safeUrl.ts';
import type { Rendering } from './rendering.ts';

/**
 * The guide as a schema.org HowTo (schema.org 29.x: HowTo, HowToStep, HowToSupply, HowToTool), as JSON-LD. Times are
 * ISO 8601 durations; addresses are whole where the maker says where the site stands, else relative.
 */
export function structuredData(rendering: Rendering): Record<string, unknown> {
  const { guide, steps } = rendering;
  const blocks = <Kind extends string>(kind: Kind) =>
    guide.blocks.find((block): block is Extract<typeof block, { kind: Kind }> => block.kind === kind);
  const parts = blocks('parts')?.rows ?? [];
  const cover = blocks('cover')?.picture;
  const totals = blocks('summary')?.totals;
  return defined({
    '@context': 'https://schema.org',
    '@type': 'HowTo',
    name: guide.title,
    description: guide.summary,
    inLanguage: guide.language,
    url: guide.site,
    version: blocks('revision')?.revision,
    dateModified: blocks('revision')?.asOf,
    author: blocks('credits')?.authors.map((name) => ({ '@type': 'Person', name })),
    image: cover?.kind === 'picture' ? imageOf(cover, rendering) : null,
    totalTime: totals?.minutes ? duration(totals.minutes) : null,
    estimatedCost: totals?.cost ? costOf(totals.cost) : null,
    supply: parts.map((row) =>
      defined({
        '@type': 'HowToSupply',
        name: [row.refs.join(', '), row.description].filter(Boolean).join(' '),
        requiredQuantity: row.amounts.length === 1 ? quantityOf(row.amounts[0]) : null,
      }),
    ),
    tool: (blocks('tools')?.rows ?? []).map(({ name }) => ({ '@type': 'HowToTool', name })),
    step: steps.map((step) => stepOf(step, rendering)),
  });
}

function stepOf(step: StepBlock, rendering: Rendering): Record<string, unknown> {
  const picture = [...withInner(step)].find((block): block is PictureBlock => block.kind === 'picture');
  const paragraphs = [...withInner(step)].flatMap((block) =>
    block.kind === 'paragraph' ? [plainWords(block.words)] : [],
  );
  const cautions = step.cautions.map(({ word, message }) => `${word.toUpperCase()}: ${message}`);
  return defined({
    '@type': 'HowToStep',
    position: step.number,
    name: step.heading,
    text: [...cautions, opening(paragraphs.join(' '))].join('\n'),
    url: `${rendering.guide.site ?? ''}${fragmentUrl(step.id)}`,
    image: picture ? imageOf(picture, rendering) : null,
  });
}

/** Characters of a step's text that are given, so that the page need not carry it twice; the address leads to the rest. */
const longestText = 320;

/** As many whole sentences as fit, and the first in any case. */
function opening(text: string): string {
  const sentences = text.match(/[^.!?]+(?:[.!?]+(?=\s|$)|$)|[.!?]+/g) ?? [text];
  let taken = '';
  for (const sentence of sentences) {
    if (taken !== '' && taken.length + sentence.length > longestText) return `${taken.trim()} …`;
    taken += sentence;
  }
  return taken.trim();
}

function imageOf(picture: PictureBlock, { guide, assetsOf }: Rendering): string | null {
  const asset = assetsOf(picture).at(-1);
  return asset === undefined ? null : `${guide.site ?? ''}${relativeUrl(asset.name)}`;
}

function duration({ hands, wait }: Minutes): string {
  const minutes = Math.round(hands + wait);
  const hours = Math.floor(minutes / 60);
  return `PT${hours > 0 ? `${hours}H` : ''}${minutes % 60 > 0 || hours === 0 ? `${minutes % 60}M` : ''}`;
}

function quantityOf(amount: { readonly n: number; readonly unit: string } | undefined): unknown {
  if (amount === undefined) return null;
  if (amount.unit === 'pcs') return amount.n;
  return { '@type': 'QuantitativeValue', value: amount.n, unitText: amount.unit };
}

function costOf({ amount, currency }: Money): unknown {
  return { '@type': 'MonetaryAmount', currency, value: amount.toFixed(2) };
}

/** Without what nobody says. */
function defined(record: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(record).filter(
      ([, value]) => value !== null && value !== undefined && !(Array.isArray(value) && value.length === 0),
    ),
  );
}
