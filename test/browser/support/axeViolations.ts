import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/**
 * What axe finds wrong on a page by WCAG 2.2 A and AA, one line each; nothing when empty.
 *
 * The window is made taller than the page while it looks: a button that lies half under a bar only because of where the
 * page happens to be scrolled to is not a small button.
 */
export async function axeViolations(page: Page): Promise<string[]> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
  const size = page.viewportSize();
  const tall = await page.evaluate(() => document.documentElement.scrollHeight);
  if (size !== null)
    await page.setViewportSize({ width: size.width, height: Math.max(size.height, tall) + 600 });
  await page.evaluate(() => scrollTo(0, 0));
  const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze();
  if (size !== null) await page.setViewportSize(size);
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`,
  );
}
