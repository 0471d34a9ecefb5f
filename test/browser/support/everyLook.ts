import type { Page } from 'playwright-core';
import { axeViolations, type Rules } from './axeViolations.ts';

/** The screens that a page must hold on. */
export const screens = { phone: { width: 360, height: 740 }, desk: { width: 1440, height: 900 } };

/**
 * What is wrong with an open page on each screen, in the light and in the dark, one line a fault: what axe finds, and
 * what runs over the edge. The page is opened once and switched in place; it is left on the last screen, in the light.
 *
 * In the dark only what colours decide is looked at: nothing else of what axe asks changes with them.
 *
 * @param only   one screen instead of both
 * @param rules  those of WCAG 2.2 A and AA, or all that axe has
 */
export async function faultsInEveryLook(
  page: Page,
  { only, rules = 'wcag' }: { only?: keyof typeof screens; rules?: Rules } = {},
): Promise<string[]> {
  const faults: string[] = [];
  for (const [screen, size] of Object.entries(screens)) {
    if (only !== undefined && screen !== only) continue;
    await page.setViewportSize(size);
    for (const scheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
      const found = await axeViolations(page, scheme === 'dark' ? 'colours' : rules);
      faults.push(...found.map((each) => `${screen}, ${scheme}: ${each}`));
    }
    const over = await overTheEdge(page);
    if (over > 0) faults.push(`${screen}: ${over} px wider than the screen`);
  }
  await page.emulateMedia({ colorScheme: 'light' });
  return faults;
}

/** By how many pixels the page is wider than the screen; 0 when it is not. */
export function overTheEdge(page: Page): Promise<number> {
  return page.evaluate(() =>
    Math.max(0, document.documentElement.scrollWidth - document.documentElement.clientWidth),
  );
}
