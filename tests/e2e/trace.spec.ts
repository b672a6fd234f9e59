import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import Sqlite from 'better-sqlite3';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { actAs, expect, expectAccessible, test } from './harness';

/** A lot of a screw that went into many sets, which many cases may have had since: racks in which lots lie mixed. */
function mixedLot(path: string): { lot: string } {
  const db = new Sqlite(path, { readonly: true });
  try {
    const found = db
      .prepare(
        `SELECT lot FROM (
             SELECT lot, item_id AS itemId, min(done_at) AS since FROM piece_moves
             WHERE lot IS NOT NULL AND to_set_id IS NOT NULL
             GROUP BY 1, 2 HAVING count(DISTINCT to_set_id) >= 5) one
           ORDER BY (SELECT count(DISTINCT case_id) FROM piece_moves used
             WHERE used.item_id = itemId AND used.done_at > since AND used.from_set_id IN
               (SELECT to_set_id FROM piece_moves came WHERE came.item_id = itemId AND came.lot = one.lot)) DESC, lot
           LIMIT 1`,
      )
      .get() as { lot: string } | undefined;
    if (!found) throw new Error('lots of the demo went into sets');
    return found;
  } finally {
    db.close();
  }
}

async function callBack(page: Page, what: 'A recall' | 'A rehearsal', button: string): Promise<void> {
  await page.getByRole('button', { name: 'Call it back' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('radio', { name: new RegExp(`^${what}`) }).check();
  await dialog.getByLabel('Why').fill('The maker calls it back: threads out of tolerance.');
  await dialog.getByLabel(/Reference of the maker/).fill('FSN-2026-014');
  await dialog.getByRole('button', { name: button }).click();
  await expect(page).toHaveURL(/\/recalls\/recall_/);
}

test('a lot is found, traced to its cases, rehearsed, called back, acknowledged, and closed by two', async ({
  page,
  hospital,
  problems,
}) => {
  test.setTimeout(180_000);
  // what is left out is refused on purpose
  problems.expect(/422|403/);
  if (!hospital) throw new Error('these tests have a hospital of their own');
  const { lot } = mixedLot(hospital.database);
  await actAs(page, 'person_nell-ashdown');
  await page.goto('/trace');
  await page.getByRole('searchbox').fill(lot);
  await page.getByRole('searchbox').press('Enter');
  await page.getByRole('link', { name: `Lot ${lot}` }).click();
  await expect(page.getByRole('heading', { level: 1, name: `Lot ${lot}` })).toBeVisible();
  await expect(page.getByRole('row').filter({ hasText: 'possible' }).first()).toBeVisible();
  await expect(page.getByText('Implanted', { exact: true }).first()).toBeVisible();
  await expectAccessible(page);

  // the cases are put in order by the server, and the address says how
  const table = page.getByRole('table', { name: `Cases and lot ${lot}` });
  await table.getByRole('button', { name: 'Case', exact: true }).click();
  await expect(page).toHaveURL(/cases-sort=reference/);
  await expect
    .poll(async () => {
      const shown = await table.getByRole('link').allTextContents();
      const inOrder = [...shown].sort(new Intl.Collator('en-GB', { numeric: true }).compare);
      return shown.join() === inOrder.join();
    })
    .toBe(true);

  // nothing is chosen beforehand, and a recall without a reason is refused beside its field
  await page.getByRole('button', { name: 'Call it back' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Call it back' }).click();
  await expect(dialog.getByRole('alert')).toContainText('Choose whether this is a recall or a rehearsal.');
  await dialog.getByRole('radio', { name: /^A recall/ }).check();
  await dialog.getByRole('button', { name: 'Call it back' }).click();
  await expect(dialog.getByRole('alert')).toContainText('Say why it is called back.');
  await expectAccessible(page);
  await page.keyboard.press('Escape');

  const trace = page.url();
  await callBack(page, 'A rehearsal', 'Rehearse it');
  await expect(page.getByText('REHEARSAL').first()).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Held as it was opened' })).toHaveCount(0);
  await expectAccessible(page);

  await page.goto(trace);
  await callBack(page, 'A recall', 'Call it back');
  await expect(page.getByText('REHEARSAL')).toHaveCount(0);
  const held = page.getByRole('region', { name: 'Held as it was opened' });
  await expect(held.getByText('held', { exact: true }).first()).toBeVisible();
  const recall = page.url();
  await expectAccessible(page);
  await page.goto('/holds');
  await expect(
    page
      .getByRole('main')
      .getByText(/recall/i)
      .first(),
  ).toBeVisible();

  // a theatre manager is told, and says so
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/notices');
  const told = page.getByRole('listitem').filter({ hasText: `called back lot ${lot}` });
  await told.filter({ hasNotText: 'REHEARSAL' }).getByRole('link', { name: 'See it' }).click();
  await expect(page).toHaveURL(recall);
  await page.getByLabel('What you found or did').fill('Theatres told at the morning brief.');
  await page.getByRole('button', { name: 'I know, and did it' }).click();
  await expect(page.getByText('“Theatres told at the morning brief.”')).toBeVisible();

  // two people close it; it lifts no hold
  await page.getByLabel('What was found and done').fill('All pieces are apart; their owner takes them back.');
  await page.getByRole('button', { name: /with a second person/ }).click();
  await page.getByRole('dialog').getByRole('combobox', { name: 'Second person' }).fill('Nell Ashdown');
  await page.getByRole('option', { name: /Nell Ashdown/ }).click();
  await page
    .getByRole('dialog')
    .getByLabel(/^Their /)
    .fill(DEMO_PASSWORD);
  await expectAccessible(page);
  await page.getByRole('dialog').getByRole('button', { name: 'I stand for it too' }).click();
  const mine = page.getByRole('dialog', { name: /^Close R-\d+$/ });
  await mine.getByLabel(/^Your /).fill(DEMO_PASSWORD);
  await mine.getByRole('button', { name: 'Close it' }).click();
  await expect(page.getByText('Closed', { exact: true }).first()).toBeVisible();
  await expect(held.getByText('held', { exact: true }).first()).toBeVisible();

  const report = await page.request.get(`${recall}/report`);
  expect(report.headers()['content-type']).toBe('application/pdf');

  await page.goto('/recalls');
  await expect(page.getByRole('region', { name: 'Closed' })).toContainText(lot);
  await expect(page.getByRole('region', { name: 'Open' })).toContainText('REHEARSAL');
  await expectAccessible(page);
});

test('a case is traced backward to lots, sets, packs and loads, and a load forward to its cases', async ({
  page,
}) => {
  await actAs(page, 'person_nell-ashdown');
  await page.goto('/trace/result?of=item&item=item_cr-c35-20');
  await page.getByRole('table').getByRole('link').first().click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Case LM-');
  await expect(page.getByRole('link', { name: /^lot / }).first()).toBeVisible();
  await expectAccessible(page);
  await page
    .getByRole('link', { name: /^load / })
    .first()
    .click();
  await expect(page.getByText('nothing speaks for the machine in between', { exact: false })).toBeVisible();
  await expectAccessible(page);
});

test('the morning names the recall under way and the orders that are due, and each leads there', async ({
  page,
}) => {
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/morning');
  await expect(page.getByText('R-00001: lot C35-4009', { exact: false })).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText(/^OR-0001, Carrowby Implants/)).toBeVisible();
  await expect(page.getByText(/^OR-0003, Sallowfen/)).toBeVisible();
  await page.getByRole('link', { name: /^R-00001/ }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Recall R-00001' })).toBeVisible();
  const people = page.getByRole('region', { name: 'People asked' });
  await expect(people.getByText('not yet', { exact: true }).first()).toBeVisible();
  await expect(people.getByText('Theatres were told', { exact: false })).toBeVisible();
  await expect(
    page.getByRole('table', { name: 'Cases of recall R-00001' }).getByText('1 confirmed'),
  ).toHaveCount(3);
});

test('the cases of a recalled item come a page at a time, and its file has every one', async ({
  page,
  hospital,
}) => {
  test.setTimeout(120_000);
  if (!hospital) throw new Error('these tests have a hospital of their own');
  const file = new Sqlite(hospital.database, { readonly: true });
  const most = file
    .prepare(
      `SELECT item_id FROM piece_moves WHERE act = 'implanted'
         GROUP BY 1 ORDER BY count(DISTINCT case_id) DESC, 1 LIMIT 1`,
    )
    .pluck()
    .get() as string;
  file.close();
  await actAs(page, 'person_nell-ashdown');
  await page.goto(`/trace/result?of=item&item=${most}`);
  const pages = page.getByRole('navigation', { name: /^Pages of / });
  const table = page.getByRole('table', { name: /^Cases / });
  const first = await table.getByRole('link').first().textContent();
  await pages.getByRole('button', { name: 'Next' }).click();
  await expect(pages.getByRole('status')).toHaveText(/^51–/);
  await expect(table.getByRole('link').first()).not.toHaveText(first ?? '');
  // the address says which page it is: a reload keeps it, and another order begins at the first
  await expect(page).toHaveURL(/cases-page=2/);
  await page.reload();
  await expect(pages.getByRole('status')).toHaveText(/^51–/);
  await expect(table.getByRole('link').first()).not.toHaveText(first ?? '');
  await table.getByRole('button', { name: 'Case', exact: true }).click();
  await expect(pages.getByRole('status')).toHaveText(/^1–50 of/);
  await callBack(page, 'A rehearsal', 'Rehearse it');
  await expect(pages.getByRole('status')).toHaveText(/^1–50 of \d+/);
  const total = Number((await pages.getByRole('status').textContent())?.match(/of (\d+)/)?.[1]);
  await pages.getByRole('button', { name: 'Next' }).click();
  await expect(pages.getByRole('status')).toHaveText(/^51–/);
  await expect(table.getByRole('link').first()).not.toHaveText(first ?? '');
  await expectAccessible(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Cases as a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^recall-R-\d{5}-cases\.csv$/);
  const lines = (await readFile(await download.path(), 'utf8')).trim().split('\r\n');
  expect(lines).toHaveLength(total + 1);
});

test('who may not call back is shown no way to, and what a person handled is for incidents', async ({
  page,
}) => {
  await page.goto('/trace/result?of=item&item=item_cr-c35-20');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Call it back' })).toHaveCount(0);
  await page.goto('/trace');
  await expect(page.getByRole('heading', { name: 'What a person handled in a period' })).toHaveCount(0);
  await page.goto('/trace/result?of=person&person=person_tomas-birkett&from=2026-01-01&until=2026-01-31');
  await expect(page.getByText('is for those who look into incidents')).toBeVisible();
});
