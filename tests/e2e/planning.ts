import type { Locator, Page } from '@playwright/test';
import { expect } from './harness';

export const SURGEON = 'person_ines-halloran';
export const OTHER_SURGEON = 'person_sunita-marlowe';

/**
 * A date in the distant weeks, so that no case of the demo is in the way. Each test has its own day, and each run too:
 * a running server keeps what was booked before.
 */
export function dayFromNow(days: number): string {
  return new Date(Date.now() + (days + RUN * 10) * DAY_MS).toISOString().slice(0, 10);
}
const DAY_MS = 86_400_000;
const RUN = Math.floor(Date.now() / 60_000) % 150;

export async function bookCase(
  page: Page,
  { day, region = 'Forearm shaft', start }: { day: string; region?: string; start?: string },
) {
  if (!start) await page.goto('/cases/new');
  await page.getByLabel('Region').selectOption({ label: region });
  await page.getByRole('radio', { name: 'Left' }).check();
  await page.getByLabel('Theatre').selectOption({ label: 'Theatre 2' });
  await page.getByLabel('Date').fill(day);
  await page.getByLabel('Begins at').fill('08:30');
  await page.getByLabel('Minutes').fill('10');
  await page.getByRole('button', { name: 'Book the case' }).click();
  await page.waitForURL(/\/cases\/case_[^/]+\/plan$/);
}

export async function choosePlate(page: Page, code: string) {
  await page.getByRole('button', { name: 'Choose a plate' }).click();
  const dialog = page.getByRole('dialog', { name: 'Add a plate' });
  await dialog.getByLabel('Find a plate').fill(code);
  await expect(dialog.getByText(/1 of \d+ plates, by name/)).toBeVisible();
  await dialog.getByRole('button', { name: new RegExp(code) }).click();
  await expect(dialog).toBeHidden();
}

export const holeOf = (page: Page, id: string): Locator => page.locator(`g[data-hole="${id}"]`);
export const saved = (page: Page) => expect(page.locator('[data-save="saved"]')).toBeVisible();
export const stops = (page: Page) => page.getByRole('status').getByText(/^Stop: \d+$/);
