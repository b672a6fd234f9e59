import type { Page } from '@playwright/test';
import { expect, expectAccessible, test } from './harness';

/** From now on the server answers as a newer program would. */
async function update(page: Page): Promise<void> {
  await page.route('**/api/v1/people/session', async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, headers: { ...answer.headers(), 'x-kitwright-build': 'newer' } });
  });
}

/** The page comes back into sight, which is when it asks how things stand. */
const look = (page: Page) => page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));

test('an open page says that a newer program is serving, and keeps what is half entered until its person decides', async ({
  page,
}) => {
  await page.goto('/catalogue');
  await page.waitForSelector('[data-listening]');
  await look(page);
  const notice = page.getByRole('status').filter({ hasText: 'Newer program' });
  await expect(notice).toHaveCount(0);

  await update(page);
  const field = page.getByRole('searchbox').or(page.getByRole('textbox')).first();
  await field.pressSequentially('plat', { delay: 70 });
  await look(page);
  await expect(notice).toBeVisible();
  await expectAccessible(page);
  await page.evaluate(() => {
    (window as unknown as { kept: boolean }).kept = true;
  });
  await notice.getByRole('button', { name: 'Load it' }).click();
  const dialog = page.getByRole('alertdialog', { name: 'Load the newer program?' });
  await expect(dialog).toContainText('save it first');
  await dialog.getByRole('button', { name: 'Stay on this page' }).click();
  await expect(field).toHaveValue('plat');
  // the way to it is not lost by staying
  await expect(notice).toBeVisible();
  expect(await page.evaluate(() => (window as unknown as { kept?: boolean }).kept)).toBe(true);

  await notice.getByRole('button', { name: 'Load it' }).click();
  await dialog.getByRole('button', { name: 'Load it' }).click();
  await expect
    .poll(() => page.evaluate(() => (window as unknown as { kept?: boolean }).kept))
    .toBeUndefined();
});

test('where nothing was entered it is loaded at one press', async ({ page }) => {
  await page.goto('/sets');
  await page.waitForSelector('[data-listening]');
  await page.evaluate(() => {
    (window as unknown as { kept: boolean }).kept = true;
  });
  await update(page);
  await look(page);
  await page.getByRole('status').getByRole('button', { name: 'Load it' }).click();
  await expect
    .poll(() => page.evaluate(() => (window as unknown as { kept?: boolean }).kept))
    .toBeUndefined();
});
