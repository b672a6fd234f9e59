import type { Browser, Page } from '@playwright/test';
import { actAs, expect, expectAccessible, test } from './harness';

const TECHNICIAN = 'person_jolene-stott';
const OTHER = 'person_tomas-birkett';

/** Opens the count of a set that is on the bench, and gives its address. */
async function openCount(page: Page, search = 'step=onBench'): Promise<string> {
  await page.goto(`/sets?${search}`);
  await page.getByRole('rowheader').getByRole('link').first().click();
  await page.getByRole('link', { name: 'Count', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Record the count' })).toBeVisible();
  return page.url();
}

const fields = (page: Page) => page.locator('[data-found]');

/** Counts every line of the layer in view with the same number. */
async function countLayer(page: Page, pieces: string): Promise<number> {
  const count = await fields(page).count();
  for (let at = 0; at < count; at += 1) await fields(page).nth(at).fill(pieces);
  return count;
}

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

test('a count survives a reload in mid-work, says what is wrong beside the line, and becomes what the set holds', async ({
  page,
  problems,
}) => {
  problems.expect(/422/);
  await openCount(page);
  // found is never filled in, and nothing counts all lines at once
  for (const field of await fields(page).all()) await expect(field).toHaveValue('');
  await expect(page.getByRole('button', { name: /all correct|as expected/i })).toHaveCount(0);

  await fields(page).first().fill('2');
  await fields(page).first().press('Enter');
  await expect(fields(page).nth(1)).toBeFocused();
  await page.keyboard.type('x');
  await page.getByRole('button', { name: 'Record the count' }).click();
  await expect(page.getByText(/Whole pieces only/).first()).toBeVisible();
  await expect(page.getByText(/Not counted yet; a layer is counted whole/).first()).toBeVisible();

  await page.reload();
  await expect(page.getByText('Taken up again')).toBeVisible();
  await expect(fields(page).first()).toHaveValue('2');
  await expect(fields(page).nth(1)).toHaveValue('x');

  // gloves: the keys on screen
  await fields(page).nth(1).focus();
  await page.getByRole('button', { name: '0', exact: true }).click();
  await expect(fields(page).nth(1)).toHaveValue(/0$/);
  const lines = await countLayer(page, '0');
  await expect(page.getByRole('navigation', { name: 'Layers' })).toContainText(`${lines} of ${lines} lines`);
  await expect(page.getByText('stops', { exact: true }).first()).toBeVisible();
  await page.getByRole('button', { name: 'Record the count' }).click();
  await expect(page.getByRole('heading', { level: 1 })).not.toContainText('Count');
  await expect(page.getByText(`${lines} lines counted`)).toBeVisible();
  await expect(page.getByText('Stops a construct').first()).toBeVisible();
});

test('two people count at once: the second is refused with both values, and has a way on', async ({
  page,
  browser,
  baseURL,
  problems,
}) => {
  problems.expect(/409/);
  const address = await openCount(page, 'step=washing');
  await countLayer(page, '1');
  await withOther(browser, baseURL ?? '', async (other) => {
    await other.goto(address);
    await expect(other.getByRole('button', { name: 'Record the count' })).toBeVisible();
    await countLayer(other, '1');
    await fields(other).first().fill('7');
    await other.getByRole('button', { name: 'Record the count' }).click();
    await expect(other).not.toHaveURL(/count/);
  });
  await page.getByRole('button', { name: 'Record the count' }).click();
  await expect(page.getByText('Nothing was saved', { exact: true })).toBeVisible();
  await expect(page.getByText('Last counted by Tomas Birkett')).toBeVisible();
  const differing = page.getByRole('row').filter({ has: page.getByRole('rowheader') });
  await expect(differing).toHaveCount(1);
  await expect(differing.getByRole('cell')).toHaveText(['1', '7']);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Count the differing lines again' }).click();
  await expect(fields(page).first()).toHaveValue('');
  await expect(fields(page).nth(1)).toHaveValue('1');
  await fields(page).first().fill('6');
  await page.getByRole('button', { name: 'Record the count' }).click();
  await expect(page).not.toHaveURL(/count/);
  await expect(page.getByText(/6 found/).first()).toBeVisible();
});

test('a sealed set is opened on the bench knowingly, and only then counted', async ({ page }) => {
  await page.goto('/sets?step=inSterileStore');
  await page.getByRole('rowheader').getByRole('link').first().click();
  await expect(page).toHaveURL(/\/sets\/set_/);
  const code = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  await expect(page.getByRole('link', { name: 'Count', exact: true })).toHaveCount(0);
  await page.getByRole('button', { name: 'Open on the bench' }).click();
  await expect(page.getByRole('alertdialog')).toContainText('no longer sterile');
  await page.getByRole('button', { name: `Open ${code}` }).click();
  await expect(page.getByRole('link', { name: 'Count', exact: true })).toBeVisible();
});

test('sets, one set and its count are readable by everyone', async ({ page }) => {
  test.setTimeout(180_000);
  await page.goto('/sets');
  await expectAccessible(page);
  await page.goto('/sets?step=held');
  await page.getByRole('rowheader').getByRole('link').first().click();
  await expect(page.getByRole('heading', { name: 'How complete it is' })).toBeVisible();
  await expectAccessible(page);
  await openCount(page, 'step=comingBack');
  await expectAccessible(page);
});

test('a set that does not exist says so', async ({ page, problems }) => {
  problems.expect(/404/);
  expect((await page.goto('/sets/set_no-such-set'))?.status()).toBe(404);
});

async function withOther(browser: Browser, url: string, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await actAs(page, OTHER);
  await page.goto(url);
  await work(page);
  await context.close();
}
