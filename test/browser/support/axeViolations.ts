import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** What axe finds wrong on a page by WCAG 2.2 A and AA, one line each; nothing when empty. */
export async function axeViolations(page: Page): Promise<string[]> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
  const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze();
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`,
  );
}
