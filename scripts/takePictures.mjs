// Takes the pictures of the documentation anew, from the demo as it is published now, into docs/pictures.
// Needs Chromium: /usr/bin/chromium, or the one that CHROMIUM names. Nothing is downloaded.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { ensureBuilt, ensureInstalled, root } from './lib/fresh.mjs';

ensureInstalled();
ensureBuilt();
const scratch = mkdtempSync(path.join(tmpdir(), 'twicebuilt-pictures-'));
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  const demo = path.join(root, 'demo/tide-lamp');
  runProgram('publish', demo, '--to', scratch);
  runProgram('rehearse', demo, '--page', path.join(scratch, 'rehearsal.html'));
  const phone = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 1.5, isMobile: true, hasTouch: true };
  const desk = { viewport: { width: 960, height: 1120 } };
  await take('site.jpg', 'site/index.html', desk);
  await take('parts-sheet.jpg', 'site/parts.html', desk);
  await take('rehearsal.jpg', 'rehearsal.html', desk);
  await take('step-on-a-phone.jpg', 'site/index.html#step-wire-the-ring', phone, async (page) => {
    await page.getByRole('button', { name: 'Take it one step at a time' }).click();
  });
} finally {
  await browser.close();
  rmSync(scratch, { recursive: true, force: true });
}

async function take(name, page, options, prepare = async () => undefined) {
  const context = await browser.newContext({ colorScheme: 'light', reducedMotion: 'reduce', ...options });
  const sheet = await context.newPage();
  const [file, fragment] = page.split('#');
  const at = pathToFileURL(path.join(scratch, file)).href;
  await sheet.goto(fragment === undefined ? at : `${at}#${fragment}`);
  await prepare(sheet);
  await sheet.waitForLoadState('networkidle');
  await sheet.screenshot({ path: path.join(root, 'docs/pictures', name), type: 'jpeg', quality: 80 });
  await context.close();
}

function runProgram(...words) {
  const { status, stderr } = spawnSync(process.execPath, [path.join(root, 'bin/twicebuilt.mjs'), ...words], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`twicebuilt ${words.join(' ')} ended with ${status}: ${stderr}`);
}
