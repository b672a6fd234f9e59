import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { actAs, expect, expectAccessible, test } from './harness';

const ADMINISTRATOR = 'person_edda-winslow';

/** A list of the catalogue's own columns, as text: the header and one row. */
async function downloaded(page: Page, name: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name }).click(),
  ]);
  return readFile(await download.path(), 'utf8');
}

const choose = (page: Page, name: string, text: string) =>
  page.getByLabel(/^Choose the file/).setInputFiles({
    name,
    mimeType: 'text/csv',
    buffer: Buffer.from(text, 'utf8'),
  });

test('people come in from the hospital’s own columns, tried first, and are taken back', async ({ page }) => {
  test.setTimeout(120_000);
  await actAs(page, ADMINISTRATOR);
  await page.goto('/exchange');
  await expectAccessible(page);
  const text = await downloaded(page, 'People as CSV');
  await page.getByRole('link', { name: 'Bring in: People' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'People' })).toBeVisible();

  // what went out comes in as it is: nothing to do
  await choose(page, 'people.csv', text);
  await expect(page.getByRole('status').filter({ hasText: 'All of it stands here already.' })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Bring in \d/ })).toHaveCount(0);

  // semicolons, another name for a column, and a role nobody has
  await choose(
    page,
    'staff.csv',
    'Staff name;Job title\nIris Penhallow;Technicien\nMoss Arkwright;Surgeon\n',
  );
  await expect(page.getByText('Technicien').first()).toBeVisible();
  await expect(page.getByRole('button', { name: /^Bring in \d/ })).toHaveCount(0);
  await expectAccessible(page);

  await choose(
    page,
    'staff.csv',
    'Staff name;Job title\nIris Penhallow;Sterile services technician\nMoss Arkwright;Surgeon\n',
  );
  const bringIn = page.getByRole('button', { name: 'Bring in 2' });
  await expect(bringIn).toBeVisible();
  await bringIn.click();
  await expect(page.getByRole('status').filter({ hasText: 'Brought in' })).toContainText(
    '2 added, 0 changed',
  );
  await expect(page.getByText(/2 added, 0 changed, 0 as they were/)).toBeVisible();
  await page.goto('/people');
  await expect(page.getByText('Iris Penhallow').first()).toBeVisible();

  await page.goto('/exchange/people');
  await page.getByRole('button', { name: 'Take it back' }).click();
  await page.getByRole('alertdialog').getByRole('button', { name: 'Take it back' }).click();
  await expect(page.getByText(/^Taken back/)).toBeVisible();
  await expectAccessible(page);
});

test('what an office program did to a code is asked about, and repaired only when a person says so', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await actAs(page, 'person_dilys-harrow');
  await page.goto('/exchange');
  const [head = '', ...rows] = (await downloaded(page, 'Catalogue as CSV')).split(/\r?\n/);
  const row = rows.find((one) => one.includes('09523706954077')) ?? '';
  await page.getByRole('link', { name: 'Bring in: Catalogue' }).click();
  // the leading zero of a GTIN lost, as a spreadsheet does with numbers; its name changed, so that there is something to do
  const damaged = row
    .replace('09523706954077', '9523706954077')
    .replace('Drill bit 1.1 × 45 mm', 'Drill bit 1.1 × 45');
  await choose(page, 'catalogue.csv', `${head}\n${damaged}\n`);
  await expect(page.getByRole('heading', { name: 'What looks damaged' })).toBeVisible();
  await expect(page.getByText('9523706954077 → 09523706954077')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Bring in \d/ })).toHaveCount(0);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Take it as offered' }).click();
  await expect(page.getByRole('heading', { name: 'What looks damaged' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Bring in 1' })).toBeVisible();
});
