import { execFile } from 'node:child_process';
import { readdir, readFile, stat } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from './openBrowser.ts';
import { type GuideName, guideNames, publishGuide } from './publishedGuides.ts';

const require = createRequire(import.meta.url);
const axePath = require.resolve('axe-core/axe.min.js');
const sites = new Map<GuideName, string>();
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
  for (const name of guideNames) sites.set(name, await publishGuide(name));
}, 180_000);
afterAll(() => browser?.close());

const siteOf = (name: GuideName) => sites.get(name) ?? '';

describe('the pages', () => {
  // The Nu Html Checker, vnu-jar 26.9.27: the HTML standard's conformance checker.
  it('hold no error for the Nu HTML checker', async () => {
    const pages = (await Promise.all([...sites.values()].map(pagesOf))).flat();
    expect(pages.length).toBeGreaterThanOrEqual(guideNames.length + 1);
    const { messages } = await nuMessages([
      ...pages,
      ...['style.css', 'parts.css'].map((file) => path.join(siteOf('demo'), file)),
    ]);
    expect(messages.filter(({ type }) => type === 'error').map(({ url, message }) => `${url}: ${message}`)).toEqual([]);
  }, 120_000);

  const lights: Readonly<Record<string, BrowserContextOptions>> = {
    'by day': { colorScheme: 'light' },
    'at night': { colorScheme: 'dark' },
    'on a phone': { colorScheme: 'light', viewport: { width: 390, height: 844 }, hasTouch: true },
    'with scripts off': { colorScheme: 'light' },
  };
  // axe-core 4.14.1: rules after WCAG 2.2 A and AA and best practices.
  it.each(guideNames.flatMap((name) => [...Object.keys(lights), 'in print'].map((light) => [name, light] as const)))(
    'of %s have no violation for axe %s',
    async (name, light) => {
      const context = await browser.newContext({ ...lights[light], bypassCSP: true });
      try {
        for (const file of await pagesOf(siteOf(name))) {
          const page = await context.newPage();
          if (light === 'with scripts off') await page.route('**/*.js', (route) => route.abort());
          if (light === 'in print') await page.emulateMedia({ media: 'print', colorScheme: 'light' });
          await page.goto(pathToFileURL(file).href);
          expect(await axeViolations(page)).toEqual([]);
          await page.close();
        }
      } finally {
        await context.close();
      }
    },
    120_000,
  );

  it.each(guideNames)('of %s never scroll sideways, wide or on a phone', async (name) => {
    for (const width of [1280, 390]) {
      const page = await browser.newPage({ viewport: { width, height: 800 } });
      for (const file of await pagesOf(siteOf(name))) {
        await page.goto(pathToFileURL(file).href);
        const [wide, shown]: [number, number] = await page.evaluate(
          '[document.documentElement.scrollWidth, document.documentElement.clientWidth]',
        );
        expect(wide, `${path.basename(file)} at ${width}`).toBeLessThanOrEqual(shown);
      }
      await page.close();
    }
  });

  it('weigh at most 150 kB for the first page of the demo, and 400 kB for a picture', async () => {
    const first = await Promise.all(['index.html', 'style.css', 'guide.js'].map((file) => weight('demo', file)));
    expect(first.reduce((sum, bytes) => sum + bytes, 0)).toBeLessThanOrEqual(150_000);
    const pictures = await readdir(path.join(siteOf('demo'), 'pictures'));
    expect(pictures.length).toBeGreaterThan(20);
    for (const picture of pictures) expect(await weight('demo', `pictures/${picture}`)).toBeLessThanOrEqual(400_000);
  });

  it('show no picture, nor a gap for one, where there is none', async () => {
    const html = await readFile(path.join(siteOf('no pictures'), 'index.html'), 'utf8');
    expect(html).not.toMatch(/<img|<figure|Picture missing/);
  });

  it('run from right to left where the language does', async () => {
    const html = await readFile(path.join(siteOf('right to left'), 'index.html'), 'utf8');
    expect(html).toContain('dir="rtl"');
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await page.goto(pathToFileURL(path.join(siteOf('right to left'), 'index.html')).href);
    const box = await page.locator('h1').boundingBox();
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeGreaterThan(1000);
    await page.close();
  });

  it('say first what is known to be wrong, and say it again at the step', async () => {
    const html = await readFile(path.join(siteOf('in trouble'), 'index.html'), 'utf8');
    expect(html).toContain('id="notices"');
    expect(html.match(/It is 3\.3 kΩ\./g)).toHaveLength(2);
    expect(html).not.toContain('called a buzzer');
    expect(html.indexOf('id="notices"')).toBeLessThan(html.indexOf('id="parts"'));
    expect(html).toMatch(/<details id="[^"]+" class="more"><summary>Why two resistors\?<\/summary>/);
  });
});

async function pagesOf(site: string): Promise<string[]> {
  return (await readdir(site)).filter((file) => file.endsWith('.html')).map((file) => path.join(site, file));
}

async function weight(name: GuideName, file: string): Promise<number> {
  return (await stat(path.join(siteOf(name), file))).size;
}

async function axeViolations(page: Page): Promise<string[]> {
  await page.addScriptTag({ path: axePath });
  const found: { id: string; nodes: { html: string; failureSummary: string }[] }[] = await page.evaluate(
    'axe.run().then(({ violations }) => violations.map(({ id, nodes }) => ({ id, nodes })))',
  );
  return found.map(({ id, nodes }) =>
    [id, ...nodes.slice(0, 3).map(({ html, failureSummary }) => `${html} ${failureSummary}`)].join('\n'),
  );
}

async function nuMessages(
  files: readonly string[],
): Promise<{ messages: { type: string; url: string; message: string }[] }> {
  const jar = require.resolve('vnu-jar/build/dist/vnu.jar');
  const args = ['-jar', jar, '--format', 'json', '--also-check-css', '--stdout', '--exit-zero-always', ...files];
  const { stdout } = await promisify(execFile)('java', args, { maxBuffer: 50_000_000 });
  return JSON.parse(stdout);
}
