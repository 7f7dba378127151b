import { execFile } from 'node:child_process';
import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serveFolder } from '../../src/server/serveFolder.ts';
import { openBrowser } from './openBrowser.ts';
import { publishGuide } from './publishedGuides.ts';

let browser: Browser;
let site: string;
let server: Awaited<ReturnType<typeof serveFolder>>;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  [browser, site] = await Promise.all([openBrowser(), publishGuide('demo')]);
  server = await serveFolder(site);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
beforeEach(async () => {
  await context?.close();
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  context.setDefaultTimeout(15_000);
  page = await context.newPage();
  await page.goto(server.url);
});

describe('a reader in a browser', () => {
  it('ticks parts, tools and steps, and finds the ticks again after a reload', async () => {
    const resistor = page.getByRole('checkbox', { name: 'R1 lies ready' });
    await resistor.check();
    await page.getByRole('checkbox', { name: 'multimeter lies ready' }).check();
    await page.locator('#step-fit-the-resistors').getByLabel('This step is done').check();
    expect(await page.locator('#parts [role=status]').textContent()).toMatch(/^1 of \d+ lie ready\.$/);
    await page.reload();
    expect(await resistor.isChecked()).toBe(true);
    expect(await page.getByRole('checkbox', { name: 'R2, R3 lies ready' }).isChecked()).toBe(false);
    expect(await page.getByRole('checkbox', { name: 'multimeter lies ready' }).isChecked()).toBe(true);
    expect(await page.locator('.course li.ticked').textContent()).toContain('Fit the resistors, done');
    await resistor.uncheck();
    await page.reload();
    expect(await resistor.isChecked()).toBe(false);
  });

  it('walks through the steps by keyboard, one at a time', async () => {
    await page.getByRole('button', { name: 'Take it one step at a time' }).press('Enter');
    expect(await shownSteps()).toEqual(['step-fit-the-resistors']);
    expect(await page.getByRole('button', { name: 'Back', exact: true }).isDisabled()).toBe(true);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    expect(await shownSteps()).toEqual(['step-fit-the-capacitors-and-the-fuse']);
    expect(await page.locator('.stride [role=status]').textContent()).toBe('Step 3 of 15');
    expect(await page.evaluate('document.activeElement.textContent')).toContain('Fit the capacitors and the fuse');
    await page.keyboard.press('ArrowLeft');
    expect(await shownSteps()).toEqual(['step-fit-the-sockets']);
    expect(new URL(page.url()).hash).toBe('#step-fit-the-sockets');
    await page.keyboard.press('Escape');
    expect((await shownSteps()).length).toBe(15);
  });

  it('walks by thumb on a phone', async () => {
    const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    const held = await phone.newPage();
    await held.goto(server.url);
    await held.getByRole('button', { name: 'Take it one step at a time' }).tap();
    await held.getByRole('button', { name: 'Next', exact: true }).tap();
    expect(await held.locator('.step:visible').getAttribute('id')).toBe('step-fit-the-sockets');
    const box = await held.getByRole('button', { name: 'Next', exact: true }).boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(44);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeGreaterThan(840);
    await swipe(held, -200);
    expect(await held.locator('.step:visible').getAttribute('id')).toBe('step-fit-the-capacitors-and-the-fuse');
    await swipe(held, 200);
    expect(await held.locator('.step:visible').getAttribute('id')).toBe('step-fit-the-sockets');
    await phone.close();
  });

  it('enlarges a picture and comes back', async () => {
    const link = page.locator('#step-fit-the-resistors a.enlarge');
    await link.click();
    const dialog = page.locator('dialog[open]');
    expect(await dialog.locator('img').getAttribute('alt')).toContain('Close-up of resistor R1');
    const fitted = await dialog.locator('img').boundingBox();
    await dialog.locator('button.sheet').click();
    expect((await dialog.locator('img').boundingBox())?.width).toBeGreaterThan(fitted?.width ?? 0);
    await page.keyboard.press('Escape');
    expect(await dialog.count()).toBe(0);
    expect(await page.evaluate('document.activeElement.className')).toBe('enlarge');
  });

  it('searches a symptom in the guide and among the mistakes of the log', async () => {
    const field = page.getByLabel('What do you see?');
    await field.fill('green spark');
    expect(await page.locator('[data-trouble] tbody tr:visible').count()).toBe(0);
    expect(await page.locator('.troubles > div:visible').count()).toBe(1);
    expect(await page.locator('.ask [role=status]').textContent()).toMatch(/^One of \d+ speaks of that\.$/);
    await field.fill('ring dark');
    expect(await page.locator('[data-trouble] tbody tr:visible').count()).toBeGreaterThan(0);
    await field.fill('kettle');
    expect(await page.locator('.ask [role=status]').textContent()).toContain('Nothing here speaks of that');
    await field.fill('');
    expect(await page.locator('[data-trouble] tbody tr:visible').count()).toBeGreaterThan(10);
  });

  it('opens without a network once it has been kept', async () => {
    await page.getByText('opens without a network').waitFor();
    await context.setOffline(true);
    const again = await context.newPage();
    await again.goto(`${server.url}#step-wire-the-ring`);
    expect(await again.locator('h1').textContent()).toBe('Tide lamp');
    await again.locator('#step-wire-the-ring img').first().scrollIntoViewIfNeeded();
    await again.waitForFunction("document.querySelector('#step-wire-the-ring img').naturalWidth > 0");
    await again.goto(`${server.url}code.html`);
    expect(await again.locator('h1').textContent()).toBe('Code');
  });

  it('prints on paper: every step, no buttons, the listings and notes unfolded', async () => {
    const pdf = path.join(await mkdtemp(path.join(tmpdir(), 'twicebuilt-print-')), 'guide.pdf');
    await writeFile(pdf, await page.pdf({ format: 'A4' }));
    const { stdout } = await promisify(execFile)('pdftotext', ['-layout', pdf, '-']);
    for (const words of ['Fit the resistors', 'Close the lamp and set the tide', 'CERN-OHL-P-2.0']) {
      expect(stdout).toContain(words);
    }
    for (const words of ['Take it one step at a time', 'Show everything', 'What do you see?']) {
      expect(stdout).not.toContain(words);
    }
  });

  it('works from the disk as well, without a server', async () => {
    await page.goto(pathToFileURL(path.join(site, 'index.html')).href);
    await page.getByRole('checkbox', { name: 'R1 lies ready' }).check();
    await page.reload();
    expect(await page.getByRole('checkbox', { name: 'R1 lies ready' }).isChecked()).toBe(true);
  });

  it('shows everything with scripts off, and no control that does nothing', async () => {
    const plain = await browser.newContext({ javaScriptEnabled: false });
    const read = await plain.newPage();
    await read.goto(server.url);
    expect(await read.locator('.step').count()).toBe(15);
    expect(await read.locator('button, input').count()).toBe(0);
    expect(await read.locator('a.enlarge').first().getAttribute('href')).toMatch(/^pictures\//);
    await plain.close();
  });

  it('asks nothing of any other host', async () => {
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.reload({ waitUntil: 'networkidle' });
    expect(asked.filter((url) => !url.startsWith(server.url) && !url.startsWith('data:'))).toEqual([]);
    expect(asked.length).toBeGreaterThan(2);
  });
});

function shownSteps(): Promise<string[]> {
  return page.evaluate(
    "[...document.querySelectorAll('.step')].filter((step) => step.checkVisibility()).map((step) => step.id)",
  );
}

/** A finger drawn sideways by so many CSS pixels, as the browser's own touch events. */
async function swipe(on: Page, dx: number): Promise<void> {
  const session = await on.context().newCDPSession(on);
  const at = (x: number) => ({ touchPoints: [{ x, y: 300 }] });
  const from = 195 - dx / 2;
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', ...at(from) });
  await session.send('Input.dispatchTouchEvent', { type: 'touchMove', ...at(from + dx / 2) });
  await session.send('Input.dispatchTouchEvent', { type: 'touchMove', ...at(from + dx) });
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await session.detach();
}
