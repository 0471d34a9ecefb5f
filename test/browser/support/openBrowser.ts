import { type Browser, chromium } from 'playwright-core';
import { findChromium } from '../../../scripts/findChromium.mjs';

/** Opens a real Chromium without a window; close it when done. */
export async function openBrowser(): Promise<Browser> {
  const { executable, env } = await findChromium(process.env);
  return chromium.launch({
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
}
