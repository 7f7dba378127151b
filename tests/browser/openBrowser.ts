import { type Browser, chromium } from 'playwright-core';

/** Debian's Chromium, or the one that the environment names. Nothing is downloaded. */
export function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'],
  });
}
