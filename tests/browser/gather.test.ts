import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serveFolder } from '../../src/server/serveFolder.ts';
import { openBrowser } from './openBrowser.ts';
import { publishGuide } from './publishedGuides.ts';

let browser: Browser;
let server: Awaited<ReturnType<typeof serveFolder>>;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
  server = await serveFolder(await publishGuide('demo'));
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
beforeEach(async () => {
  await context?.close();
  context = await browser.newContext();
  context.setDefaultTimeout(15_000);
  page = await context.newPage();
  await page.goto(`${server.url}parts.html`);
});

const amountOf = (id: string) => page.locator(`[data-row="${id}"] .amount`).textContent();

describe('a reader who gathers parts', () => {
  it('finds what was ticked in the guide, and the guide finds what was ticked here', async () => {
    await page.getByRole('checkbox', { name: 'R1 lies ready' }).check();
    expect(await page.locator('[data-row="part-R1"]').isVisible()).toBe(false);
    expect(await page.locator('#state').textContent()).toBe('For one build, without the one row that you have ticked.');
    await page.goto(server.url);
    expect(await page.getByRole('checkbox', { name: 'R1 lies ready' }).isChecked()).toBe(true);
    await page.getByRole('checkbox', { name: 'C1 lies ready', exact: true }).check();
    await page.goBack();
    await page.locator('[data-row="part-C1"]').waitFor({ state: 'hidden' });
    expect(await page.getByRole('checkbox', { name: 'C1 lies ready', exact: true }).isChecked()).toBe(true);
  });

  it('counts for several builds, and stays at one where no number is written', async () => {
    const before = await page.locator('#whole-sum').textContent();
    await page.getByLabel('For how many builds').fill('3');
    expect([await amountOf('part-R2'), await amountOf('part-W1')]).toEqual(['6', '1.2 m']);
    const sum = Number.parseFloat(before ?? '');
    expect(Number.parseFloat((await page.locator('#whole-sum').textContent()) ?? '')).toBeCloseTo(3 * sum, 5);
    await page.getByLabel('For how many builds').fill('0');
    expect(await amountOf('part-R2')).toBe('2');
    expect(await page.getByLabel('For how many builds').getAttribute('aria-invalid')).toBe('true');
  });

  it('takes the list along as it stands', async () => {
    await page.getByRole('checkbox', { name: 'R1 lies ready' }).check();
    await page.getByLabel('For how many builds').fill('4');
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#take').click()]);
    expect(download.suggestedFilename()).toBe('parts.csv');
    const text = await readFile(await download.path(), 'utf8');
    const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
    expect(errors).toEqual([]);
    expect(data.some((row) => row.References === 'R1')).toBe(false);
    expect(data.find((row) => row.References === 'R2, R3')?.Amount).toBe('8');
  });

  it('goes on where storage is blocked', async () => {
    await context.addInitScript(
      "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('blocked', 'SecurityError'); } })",
    );
    await page.reload();
    await page.getByRole('checkbox', { name: 'R1 lies ready' }).check();
    expect(await page.locator('[data-row="part-R1"]').isVisible()).toBe(false);
  });
});

it('finds the whole list for one build where scripts are off', async () => {
  const plain = await browser.newContext({ javaScriptEnabled: false });
  const still = await plain.newPage();
  await still.goto(`${server.url}parts.html`);
  expect(await still.locator('#builds').isVisible()).toBe(false);
  expect(await still.locator('[data-row="part-R2"] .amount').textContent()).toBe('2');
  const [download] = await Promise.all([still.waitForEvent('download'), still.locator('#take').click()]);
  expect(await readFile(await download.path(), 'utf8')).toContain('R2');
  await plain.close();
});
