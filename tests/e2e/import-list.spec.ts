import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import writeWorkbook from 'write-excel-file/universal';
import { addDays } from '@/lib/quantities/plainDate';
import { readListFile } from '@/lib/theatre/import/readList';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { fhirBundle, PATIENT_WORDS } from '../fixtures/fhirList';
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
  await expect(wrong.getByText('choose the column for Surgeon')).toBeVisible();
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
  // each new row names its case and leads to it
  const named = page
    .getByRole('table', { name: 'What was done with each row' })
    .getByRole('link', { name: /^LM-/ });
  await expect(named).toHaveCount(4);
  const reference = (await named.first().textContent()) ?? '';
  await named.first().click();
  await expect(page.getByRole('heading', { level: 1, name: reference })).toBeVisible();
  await page.goBack();
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

/** Three weeks ahead: nothing of the demo is there. */
const day = (more: number) => addDays(wallClock(new Date().toISOString()).date, 21 + more);
const HEAD = 'Theatre,Date,Start,Minutes,Region,Side,Surgeon,Urgency';

test('every cell that is wrong is named at once; put right, the whole file goes in', async ({ page }) => {
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/cases/import');
  const rows = (theatre: string, start: string, minutes: string) =>
    `${HEAD}\r\n${theatre},${day(0)},08:30,60,Ankle,Left,Tobias Wray,Booked\r\nTheatre 2,${day(0)},${start},${minutes},Ankle,Right,Ines Halloran,Booked\r\n`;
  await choose(page, 'wrong.csv', rows('Theatre 9', '25:10', 'long'));
  const wrong = page.getByRole('table', { name: 'Problems, cell by cell' });
  for (const [row, column, value] of [
    ['2', 'Theatre', '“Theatre 9”'],
    ['3', 'Start', '“25:10”'],
    ['3', 'Minutes', '“long”'],
  ] as const) {
    const line = wrong.getByRole('row').filter({ hasText: value });
    await expect(line).toContainText(row);
    await expect(line).toContainText(column);
  }
  await expect(page.getByText('3 problems', { exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Import / })).toHaveCount(0);
  await choose(page, 'right.csv', rows('Theatre 1', '10:10', '45'));
  await page.getByRole('button', { name: 'Import 2 cases' }).click();
  await expect(page.getByText('2 booked, 0 moved.')).toBeVisible();
});

test('of a workbook with several sheets the first that is a list is read, another can be chosen, and how its dates are meant', async ({
  page,
}) => {
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/cases/import');
  // a date that could be either way round
  const wanted = Array.from({ length: 31 }, (_, more) => day(more)).find(
    (one) => Number(one.slice(8)) <= 12 && one.slice(8) !== one.slice(5, 7),
  );
  if (!wanted) throw new Error('every month has a day up to the twelfth');
  const [year, month, dayOfMonth] = wanted.split('-');
  const either = `${dayOfMonth}/${month}/${year}`;
  const sheetOf = (date: string, start: string) =>
    [HEAD.split(','), ['Theatre 1', date, start, '60', 'Ankle', 'Left', 'Tobias Wray', 'Booked']].map(
      (cells) => cells.map((value) => ({ value, type: String })),
    );
  const book = writeWorkbook([
    { sheet: 'Notes', data: [[{ value: 'Nothing but remarks', type: String }]] },
    { sheet: 'Iso', data: sheetOf(wanted, '15:30') },
    { sheet: 'List', data: sheetOf(either, '08:30') },
  ]);
  const file = Buffer.from(await (await book.toBlob()).arrayBuffer());
  await choose(
    page,
    'two-sheets.xlsx',
    file,
    'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  );
  const sheet = page.getByLabel('Sheet', { exact: true });
  await expect(sheet).toHaveValue('Iso');
  await sheet.selectOption('List');
  const dates = page.getByLabel('Dates such as 03/04/2026');
  await expect(dates).toBeVisible();
  await dates.selectOption('dayFirst');
  const lines = page.getByRole('table', { name: 'What would be done with each row' });
  await expect(lines).toContainText(`${dayWords(wanted)} ${year}, 08:30`);
  await page.getByRole('button', { name: 'Import 1 case' }).click();
  await expect(page.getByText('1 booked, 0 moved.')).toBeVisible();
});

test('a FHIR bundle books its case without a word of the patient, and the very same file does nothing again', async ({
  page,
}) => {
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/cases/import');
  const bundle = JSON.stringify(
    fhirBundle({
      version: 'R4',
      start: `${day(14)}T10:00:00Z`,
      end: `${day(14)}T11:15:00Z`,
      theatre: 'Theatre 2',
      surgeon: { given: ['Ines'], family: 'Halloran' },
    }),
  );
  await choose(page, 'list.json', bundle, 'application/json');
  await page.getByRole('button', { name: 'Import 1 case' }).click();
  await expect(page.getByText('1 booked, 0 moved.')).toBeVisible();
  await expect(page.getByRole('link', { name: /^LM-/ })).toHaveCount(1);
  for (const word of PATIENT_WORDS) await expect(page.getByText(word)).toHaveCount(0);
  await choose(page, 'again.json', bundle, 'application/json');
  await expect(page.getByText('Imported already')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Import / })).toHaveCount(0);
});
