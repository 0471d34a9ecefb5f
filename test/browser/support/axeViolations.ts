import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type axe from 'axe-core';
import type { Page } from 'playwright-core';

/** Which of axe's rules are asked: those of WCAG 2.2 A and AA, all of them, or only those that colours decide. */
export type Rules = 'wcag' | 'all' | 'colours';

/** The shortest form of it: a page reads it in half the time. */
const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const asked: Record<Rules, axe.RunOptions> = {
  wcag: { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] },
  all: {},
  colours: { runOnly: ['color-contrast', 'link-in-text-block'] },
};

/**
 * What axe finds wrong on a page, one line each; nothing when empty.
 *
 * The window is made taller than the page while it looks: a button that lies half under a bar only because of where the
 * page happens to be scrolled to is not a small button. It looks once the page is at rest: half-way through a change of
 * colours, light letters stand on a ground that is still light.
 *
 * @param rules  those of WCAG 2.2 A and AA unless told otherwise
 */
export async function axeViolations(page: Page, rules: Rules = 'wcag'): Promise<string[]> {
  const size = page.viewportSize();
  const tall = await page.evaluate(() => document.documentElement.scrollHeight);
  if (size !== null)
    await page.setViewportSize({ width: size.width, height: Math.max(size.height, tall) + 600 });
  await page.evaluate(() => scrollTo(0, 0));
  await atRest(page);
  // Reading axe costs more than its look at a page: it stays with the document it was put in.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  const violations = await page.evaluate(
    (options) =>
      (window as unknown as { axe: typeof axe }).axe.run(document, options).then((found) => found.violations),
    { ...asked[rules], resultTypes: ['violations'] } satisfies axe.RunOptions,
  );
  if (size !== null) await page.setViewportSize(size);
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`,
  );
}

/** Waits until the styles that follow the screen are drawn and no change of colour or place is under way. */
async function atRest(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    await frame();
    await frame();
    await Promise.allSettled(
      document
        .getAnimations()
        .filter((each) => each.effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY)
        .map((each) => each.finished),
    );
  });
}
