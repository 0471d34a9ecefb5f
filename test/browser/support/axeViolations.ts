import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** Which of axe's rules are asked: those of WCAG 2.2 A and AA, all of them, or only those that colours decide. */
export type Rules = 'wcag' | 'all' | 'colours';

/**
 * What axe finds wrong on a page, one line each; nothing when empty.
 *
 * The window is made taller than the page while it looks: a button that lies half under a bar only because of where the
 * page happens to be scrolled to is not a small button.
 *
 * @param rules  those of WCAG 2.2 A and AA unless told otherwise
 */
export async function axeViolations(page: Page, rules: Rules = 'wcag'): Promise<string[]> {
  const size = page.viewportSize();
  const tall = await page.evaluate(() => document.documentElement.scrollHeight);
  if (size !== null)
    await page.setViewportSize({ width: size.width, height: Math.max(size.height, tall) + 600 });
  await page.evaluate(() => scrollTo(0, 0));
  const { violations } = await builder(page, rules).analyze();
  if (size !== null) await page.setViewportSize(size);
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`,
  );
}

function builder(page: Page, rules: Rules): AxeBuilder {
  // Without frames of another house axe can sum up in the page itself, with no second page opened for it.
  const axe = new AxeBuilder({ page }).setLegacyMode(true);
  if (rules === 'colours') return axe.withRules(['color-contrast', 'link-in-text-block']);
  if (rules === 'all') return axe;
  return axe.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']);
}
