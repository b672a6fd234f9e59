import type { Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { expect } from './harness';

/** Tries the change on the page against the catalogue and all plans, and waits for what it found. */
export async function tryChange(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Try it (against|again)/ }).click();
  await expect(page.getByText(/^You tried it on/)).toBeVisible({ timeout: 60_000 });
}

/** The second person agrees: from when, then the proof of who they are. */
export async function agreeToChange(
  page: Page,
  { trigger, when, confirm }: { trigger: string | RegExp; when: RegExp | null; confirm: string },
): Promise<void> {
  await page.getByRole('button', { name: trigger }).click();
  const dialog = page.getByRole('dialog');
  if (when) await dialog.getByRole('radio', { name: when }).check();
  await dialog.getByRole('button', { name: 'Go on' }).click();
  await dialog.getByLabel(/password/i).fill(DEMO_PASSWORD);
  await dialog.getByRole('button', { name: confirm }).click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
}
