import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { readListFile } from '@/lib/theatre/import/readList';
import { actAs, expect, expectAccessible, test } from './harness';

const CSV = 'text/csv';
const choose = (page: Page, name: string, content: string | Buffer, mimeType = CSV) =>
  page
    .getByLabel(/Choose the file/)
    .setInputFiles({ name, mimeType, buffer: Buffer.isBuffer(content) ? content : Buffer.from(content) });

test('a theatre list is tried, put right by its columns, imported whole, and not twice', async ({
  page,
  problems,
}) => {
  test.setTimeout(120_000);
  // a file that cannot be read is refused on purpose
  problems.expect(/422/);
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/cases/import');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Sample CSV' }).click(),
  ]);
  const sample = readFileSync(await download.path(), 'utf8');

  // what is wrong stands at its cell, all at once, and a patient's data is not repeated
  const broken = sample
    .replace('Surgeon', 'Who operates')
    .replace('Distal radius', 'Shoulder')
    .replace('Ankle', 'Penelope Quillfeather');
  await choose(page, 'broken.csv', broken);
  const wrong = page.getByRole('region', { name: 'What is in the way' });
  await expect(wrong.getByText('choose the column for Surgeon above')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Import / })).toHaveCount(0);
  await page.getByLabel('Surgeon', { exact: true }).selectOption({ label: '7: Who operates' });
  await expect(wrong.getByText('“Shoulder”')).toBeVisible();
  await expect(wrong.getByText('not shown: looks like a patient’s data')).toBeVisible();
  await expect(page.getByText('Quillfeather')).toHaveCount(0);
  await expectAccessible(page);

  // the sample itself goes in whole
  await choose(page, 'theatre-list.csv', sample);
  await expect(page.getByText('4 new, 0 moved, 0 as they are.')).toBeVisible();
  await page.getByRole('button', { name: 'Import 4 cases' }).click();
  await expect(page.getByText('4 booked, 0 moved.')).toBeVisible();
  await choose(page, 'theatre-list.csv', sample);
  await expect(page.getByText('Imported already')).toBeVisible();

  // a row that comes with another time moves its case
  await choose(page, 'later.csv', sample.replace(',08:30,', ',08:00,'));
  await expect(page.getByText('0 new, 1 moved, 3 as they are.')).toBeVisible();
  await page.getByRole('button', { name: 'Import 1 case' }).click();
  await expect(page.getByText('0 booked, 1 moved.')).toBeVisible();

  // the workbook says the same as the CSV did
  const answer = await page.request.get('/cases/import/sample.xlsx');
  const book = await answer.body();
  expect((await readListFile(new Uint8Array(book), { sheet: null, columns: {} })).ok).toBe(true);
  await choose(page, 'theatre-list.xlsx', book, answer.headers()['content-type']);
  await expect(page.getByText('0 new, 1 moved, 3 as they are.')).toBeVisible();
  await choose(page, 'nothing.csv', 'Theatre,Start\n');
  await expect(page.getByRole('alert').getByText('There is no case in it')).toBeVisible();
});
