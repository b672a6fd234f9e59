import { actAs, expect, expectAccessible, test } from './harness';

const TECHNICIAN = 'person_jolene-stott';

test.beforeEach(async ({ page }) => {
  await actAs(page, TECHNICIAN);
});

test('the whole-hospital view puts what a shortage stops first, is searched and filtered, and keeps it in the address', async ({
  page,
}) => {
  await page.goto('/sets');
  const rows = page.getByRole('row').filter({ has: page.getByRole('rowheader') });
  expect(await rows.count()).toBeGreaterThanOrEqual(40);
  await expect(rows.first()).toContainText(/stops a (case|construct)/);
  await expect(rows.first()).toContainText(/short .+: (no|\d)/);
  await page.getByRole('combobox', { name: 'Where' }).selectOption({ label: 'Held' });
  await expect(page).toHaveURL(/step=held/);
  await page.reload();
  for (const row of await rows.all()) await expect(row).toContainText('held, because');
  await page.getByLabel('Find').fill('no such set anywhere');
  await expect(page.getByText('No set matches the filter.')).toBeVisible();
});

test('a sealed set is opened on the bench knowingly, and only then counted', async ({ page }) => {
  await page.goto('/sets?step=inSterileStore');
  await page.getByRole('rowheader').getByRole('link').first().click();
  await expect(page).toHaveURL(/\/sets\/set_/);
  const code = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  const count = page.getByRole('link', { name: `Inspect and count ${code}` });
  await expect(count).toHaveCount(0);
  await page.getByRole('button', { name: 'Open on the bench' }).click();
  await expect(page.getByRole('alertdialog')).toContainText('no longer sterile');
  await page.getByRole('button', { name: `Open ${code}` }).click();
  await expect(count).toBeVisible();
});

test('a set that is held is readable by everyone', async ({ page }) => {
  await page.goto('/sets?step=held');
  await page.getByRole('rowheader').getByRole('link').first().click();
  await expect(page.getByRole('heading', { name: 'How complete it is' })).toBeVisible();
  await expectAccessible(page);
});

test('a set that does not exist says so', async ({ page, problems }) => {
  problems.expect(/404/);
  expect((await page.goto('/sets/set_no-such-set'))?.status()).toBe(404);
});
