import { expect, type Page } from '@playwright/test';
import type { Result, RunOptions } from 'axe-core';
import { SCREENS, type Screen, setScreen, setTheme, THEMES } from './appearance';
import { runAxe } from './axe';
import { markContrastSample } from './contrast-sample';

/** WCAG 2.2, levels A and AA, with everything it took over from 2.0 and 2.1, as axe-core tags its rules. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'];

/** axe leaves the size of targets out unless asked. */
const ALL: RunOptions = {
  runOnly: TAGS,
  rules: { 'target-size': { enabled: true } },
  resultTypes: ['violations'],
};
/** The two rules that read colours: contrast, and links in a text that are told by nothing else. */
const COLOURS: RunOptions = {
  runOnly: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] },
  resultTypes: ['violations'],
};

/**
 * Checks the present page with axe, and that nothing has to be scrolled sideways to be read (WCAG 2.2, 1.4.10 Reflow:
 * 320 CSS pixels). Everything at every width; in the other theme, which differs in its colours alone, the rules that read
 * colours. Leaves the window as wide as it was.
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
      // a row half under the head of its table is reached by scrolling on: each page is looked at from its top
      await page.evaluate(() => window.scrollTo(0, 0));
      await settle(page);
      await markContrastSample(page);
      const { violations } = await runAxe(page, theme === THEMES[0] ? ALL : COLOURS);
      expect(violations.map(told), `axe at ${page.url()}, ${screen}, ${theme}`).toEqual([]);
    }
  }
  if (before) await page.setViewportSize(before);
}

function told({ id, help, nodes }: Result): string {
  const places = nodes
    .slice(0, 5)
    .map((node) => `    ${node.target.join(' ')}\n      ${node.failureSummary?.replace(/\s+/g, ' ')}`);
  return `${id}: ${help}\n${places.join('\n')}`;
}

async function expectNoSidewaysScroll(page: Page, screen: Screen): Promise<void> {
  const width = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(width, `page width at ${page.url()}, ${screen}`).toBeLessThanOrEqual(SCREENS[screen].width);
}

/** Colours in the middle of a transition are no colours of the design: each is brought to its end rather than waited for. */
async function settle(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const animation of document.getAnimations()) {
      if (animation.effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY) animation.finish();
    }
  });
}
