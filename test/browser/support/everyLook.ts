import type { Page } from 'playwright-core';
import { axeViolations, type Rules } from './axeViolations.ts';

/** The screens that a page must hold on. */
export const screens = { phone: { width: 360, height: 740 }, desk: { width: 1440, height: 900 } };

type Screen = keyof typeof screens;
type Look = { screen: Screen; scheme: 'light' | 'dark' };

/** By day a phone in the light and a desk in the dark; by night (test/nightly/everyLook.test.ts) each in both. */
const byDay: readonly Look[] = [
  { screen: 'phone', scheme: 'light' },
  { screen: 'desk', scheme: 'dark' },
];
const all: readonly Look[] = (['phone', 'desk'] as const).flatMap((screen) =>
  (['light', 'dark'] as const).map((scheme) => ({ screen, scheme })),
);

/**
 * What is wrong with an open page on each screen, in the light and in the dark, one line a fault: what axe finds, and
 * what runs over the edge. The page is opened once and switched in place; it is left on the last screen, in the light.
 *
 * Where a screen is looked at in the light and in the dark, only what colours decide is asked in the dark: nothing else
 * of what axe asks changes with them.
 *
 * @param only   one of the screens
 * @param rules  those of WCAG 2.2 A and AA, or all that axe has
 * @param looks  those of the ordinary run, or all
 */
export async function faultsInEveryLook(
  page: Page,
  { only, rules = 'wcag', looks = 'by-day' }: { only?: Screen; rules?: Rules; looks?: 'by-day' | 'all' } = {},
): Promise<string[]> {
  const faults: string[] = [];
  const asked = looks === 'by-day' ? byDay : all;
  for (const [screen, size] of Object.entries(screens)) {
    if (only !== undefined && screen !== only) continue;
    await page.setViewportSize(size);
    for (const { scheme } of asked.filter((look) => look.screen === screen)) {
      await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
      const found = await axeViolations(page, asked === all && scheme === 'dark' ? 'colours' : rules);
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
