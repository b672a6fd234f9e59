import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { SCREENS, type Screen, setScreen, setTheme, THEMES } from './appearance';

/** WCAG 2.2, levels A and AA, with everything it took over from 2.0 and 2.1, as axe-core tags its rules. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'];

/**
 * Checks the present page with axe in both themes, and that nothing has to be scrolled sideways to be read
 * (WCAG 2.2, 1.4.10 Reflow: 320 CSS pixels). Leaves the window as wide as it was.
 * @param screens at which widths; desk and narrowest unless said otherwise
 */
export async function expectAccessible(
  page: Page,
  { screens = ['desk', 'narrowest'] }: { screens?: readonly Screen[] } = {},
): Promise<void> {
  const before = page.viewportSize();
  for (const screen of screens) {
    await setScreen(page, screen);
    await expectNoSidewaysScroll(page, screen);
    for (const theme of THEMES) {
      await setTheme(page, theme);
      await settle(page);
      const { violations } = await new AxeBuilder({ page })
        // axe leaves this one out unless asked
        .options({ rules: { 'target-size': { enabled: true } } })
        .withTags(TAGS)
        .analyze();
      const told = violations.map(
        ({ id, help, nodes }) =>
          `${id}: ${help}\n${nodes
            .slice(0, 5)
            .map((node) => `    ${node.target.join(' ')}\n      ${node.failureSummary?.replace(/\s+/g, ' ')}`)
            .join('\n')}`,
      );
      expect(told, `axe at ${page.url()}, ${screen}, ${theme}`).toEqual([]);
    }
  }
  if (before) await page.setViewportSize(before);
}

async function expectNoSidewaysScroll(page: Page, screen: Screen): Promise<void> {
  const width = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(width, `page width at ${page.url()}, ${screen}`).toBeLessThanOrEqual(SCREENS[screen].width);
}

/**
 * Colours in the middle of a transition are no colours of the design. Each is brought to its end rather than waited for:
 * axe opens and closes a page of its own, and a page that was behind another one may be drawn late or not at all.
 */
async function settle(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const animation of document.getAnimations()) {
      if (animation.effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY) animation.finish();
    }
  });
}
