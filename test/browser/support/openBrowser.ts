import { type Browser, chromium } from 'playwright-core';
import { findChromium } from '../../../scripts/findChromium.mjs';

/**
 * Opens a real Chromium without a window; close it when done. Its pages keep no app on the device unless they ask for it
 * (`serviceWorkers: 'allow'`): laying it in costs each fresh device some megabytes, and has tests of its own.
 */
export async function openBrowser(): Promise<Browser> {
  const { executable, env } = await findChromium(process.env);
  const browser = await chromium.launch({
    executablePath: executable,
    env: { ...(process.env as Record<string, string>), ...env },
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
  });
  const newContext = browser.newContext.bind(browser);
  browser.newContext = (options) => newContext({ serviceWorkers: 'block', ...options });
  const newPage = browser.newPage.bind(browser);
  browser.newPage = (options) => newPage({ serviceWorkers: 'block', ...options });
  return browser;
}
