import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { AxeResults, RunOptions } from 'axe-core';
import { ROOT } from '../../../scripts/bootstrap/places.mjs';
import { SAMPLED } from './contrast-sample';

const AXE = readFileSync(join(ROOT, 'node_modules/axe-core/axe.min.js'), 'utf8');

/**
 * Runs axe in the page itself, where it is read once for each document; contrast it measures on the marked sample alone.
 * (Its builder for Playwright reads it anew every time, and puts the answer together in a page of its own, which is what a
 * page with frames would need.)
 */
export async function runAxe(page: Page, options: RunOptions): Promise<AxeResults> {
  if (page.frames().length > 1) throw new Error('axe is not read into frames, and this page has one');
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  return page.evaluate(
    ({ asked, mark }) => {
      const { axe } = window as unknown as { axe: typeof import('axe-core') };
      axe.configure({ rules: [{ id: 'color-contrast', selector: `[${mark}]` }] });
      return axe.run(document, asked);
    },
    { asked: options, mark: SAMPLED },
  );
}
