import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { JSHandle, Page } from '@playwright/test';
import type { AxeResults, ElementContext, RunOptions } from 'axe-core';
import { ROOT } from '../../../scripts/bootstrap/places.mjs';

const AXE = readFileSync(join(ROOT, 'node_modules/axe-core/axe.min.js'), 'utf8');

/**
 * Runs axe in the page itself, where it is read once for each document. (Its builder for Playwright reads it anew every
 * time, and puts the answer together in a page of its own, which is what a page with frames would need.)
 * @param within these elements and what they hold; null is the whole page
 */
export async function runAxe(
  page: Page,
  within: JSHandle<Element[]> | null,
  options: RunOptions,
): Promise<AxeResults> {
  if (page.frames().length > 1) throw new Error('axe is not read into frames, and this page has one');
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  return page.evaluate(
    ({ include, asked }) => {
      const { axe } = window as unknown as { axe: typeof import('axe-core') };
      return axe.run((include ? { include } : document) as ElementContext, asked);
    },
    { include: within, asked: options },
  );
}
