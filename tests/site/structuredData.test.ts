import { describe, expect, test } from 'vitest';
import type { SummaryBlock } from '#guide/guide.ts';
import { renderSite } from '#render/site/renderSite.ts';
import { assetsFor } from './assetsFor.ts';
import { greenhouseWhisper } from './greenhouseWhisper.ts';
import { readPage } from './readPage.ts';

const guide = greenhouseWhisper();

function structured(of = guide) {
  const html = renderSite(of, assetsFor(of)).find(({ path }) => path === 'index.html')?.text ?? '';
  const script = readPage(html)
    .named('script')
    .find((one) => one.getAttribute('type') === 'application/ld+json');
  return JSON.parse(script?.textContent ?? '');
}

// Properties of schema.org's HowTo and HowToStep, and ISO 8601-1:2019, 5.5.2 for durations (from memory).
describe('structured data', () => {
  test('tell the guide as a HowTo: its steps in order, what it takes, and how long', () => {
    const data = structured();
    expect(data).toMatchObject({
      '@context': 'https://schema.org',
      '@type': 'HowTo',
      name: 'The greenhouse whisper',
      totalTime: 'PT26H25M',
    });
    expect(data.step.map(({ position }: { position: number }) => position)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(data.step[1].text).toContain('CAUTION: The iron burns skin at a touch.');
    expect(data.tool).toContainEqual({ '@type': 'HowToTool', name: 'multimeter' });
    expect(data.supply[0]).toEqual({
      '@type': 'HowToSupply',
      name: 'U1 Controller board with 3.3 V logic',
      requiredQuantity: 1,
    });
  });

  test('give whole addresses, and a card with a picture, where the maker says where the site stands', () => {
    const placed = { ...guide, site: 'https://example.org/whisper/', summary: 'A stake that says when it is thirsty.' };
    expect(structured(placed).step[0].url).toBe('https://example.org/whisper/#step-cut-and-tin-the-wires');
    expect(structured().step[0].url).toBe('#step-cut-and-tin-the-wires');
    const html = renderSite(placed, assetsFor(placed)).find(({ path }) => path === 'index.html')?.text ?? '';
    const properties = readPage(html)
      .named('meta')
      .flatMap((meta) => meta.getAttribute('property') ?? []);
    expect(properties).toEqual(
      expect.arrayContaining(['og:title', 'og:description', 'og:url', 'og:image', 'og:image:alt']),
    );
    expect(html).toContain('content="https://example.org/whisper/pictures/');
  });

  test('give time and cost only where the guide has them for the whole', () => {
    const withTotals = (totals: SummaryBlock['totals']) => ({
      ...guide,
      blocks: guide.blocks.map((block) => (block.kind === 'summary' ? { ...block, totals } : block)),
    });
    const open = structured(withTotals({ minutes: null, cost: null }));
    expect(open).not.toHaveProperty('totalTime');
    expect(open).not.toHaveProperty('estimatedCost');
    const whole = structured(withTotals({ minutes: { hands: 40, wait: 0 }, cost: { amount: 31.4, currency: 'EUR' } }));
    expect(whole.totalTime).toBe('PT40M');
    expect(whole.estimatedCost).toEqual({ '@type': 'MonetaryAmount', currency: 'EUR', value: '31.40' });
  });
});
