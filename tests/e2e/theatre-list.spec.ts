import type { Locator, Page } from '@playwright/test';
import { addDays } from '@/lib/quantities/plainDate';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { actAs, expect, expectAccessible, test } from './harness';

/** A day of the demo on which theatre 4 has no case. */
const DAY = addDays(wallClock(new Date().toISOString()).date, 6);
const THEATRE = 'Theatre 4, day surgery';
const LIST = `/theatre-list?date=${DAY}`;

/** Books three cases in theatre 4, 08:30, 09:45 and 11:00, as an import does; their references in that order. */
async function threeCases(page: Page): Promise<string[]> {
  await page.goto('/cases/import');
  const file = [
    'Theatre,Date,Start,Minutes,Region,Side,Surgeon,Urgency,Row id',
    ...['08:30', '09:45', '11:00'].map(
      (time, at) =>
        `"${THEATRE}",${DAY},${time},60,Ankle,${at % 2 === 0 ? 'Left' : 'Right'},Tobias Wray,Booked,browser-${at}`,
    ),
  ].join('\r\n');
  await page
    .getByLabel(/Choose the file/)
    .setInputFiles({ name: 'three.csv', mimeType: 'text/csv', buffer: Buffer.from(file) });
  await page.getByRole('button', { name: 'Import 3 cases' }).click();
  await expect(page.getByText('3 booked, 0 moved.')).toBeVisible();
  const cells = await page.getByRole('link', { name: /^LM-/ }).allTextContents();
  expect(cells).toHaveLength(3);
  return cells;
}

const row = (page: Page, reference: string): Locator =>
  page.getByRole('table', { name: 'Cases of the day' }).getByRole('row').filter({ hasText: reference });
const shownAt = (page: Page, reference: string, times: string) =>
  expect(row(page, reference).getByText(times, { exact: true })).toBeVisible();

test.describe.configure({ mode: 'serial' });

let cases: string[] = [];
const nth = (at: number) => cases[at] as string;

test('a case moves by dialog, changes places by keyboard, goes and comes back; a reload shows the same', async ({
  page,
  problems,
}) => {
  test.setTimeout(120_000);
  // a taken time, and no reason, are refused on purpose
  problems.expect(/422/);
  await actAs(page, 'person_gwen-sallis');
  cases = await threeCases(page);
  await page.getByRole('link', { name: 'To the theatre list' }).click();
  await expect(page).toHaveURL(new RegExp(`date=${DAY}`));
  await expect(page.getByRole('heading', { level: 1 })).toContainText(dayWords(DAY));
  for (const [at, times] of ['08:30–09:30', '09:45–10:45', '11:00–12:00'].entries())
    await shownAt(page, nth(at), times);

  await row(page, nth(0))
    .getByRole('button', { name: `Move ${nth(0)}` })
    .click();
  const dialog = page.getByRole('dialog', { name: `Move ${nth(0)}` });
  await expectAccessible(page);
  // a time that another case has is refused, and the dialog stays
  await dialog.getByLabel('Begins').fill('10:00');
  await dialog.getByRole('button', { name: 'Move the case' }).click();
  await expect(dialog.getByRole('alert')).toContainText(nth(1));
  await dialog.getByLabel('Begins').fill('08:15');
  await dialog.getByRole('button', { name: 'Move the case' }).click();
  await expect(dialog).toBeHidden();
  await shownAt(page, nth(0), '08:15–09:15');

  const later = row(page, nth(0)).getByRole('button', { name: `${nth(0)} after the case after it` });
  await later.focus();
  await page.keyboard.press('Enter');
  await shownAt(page, nth(1), '08:15–09:15');
  // what lay between the first and the second lies there still
  await shownAt(page, nth(0), '09:45–10:45');

  await row(page, nth(2))
    .getByRole('button', { name: `Cancel ${nth(2)}` })
    .click();
  const cancel = page.getByRole('dialog', { name: `Cancel ${nth(2)}` });
  await cancel.getByRole('button', { name: 'Cancel the case' }).click();
  await expect(cancel.getByRole('alert')).toBeVisible();
  await cancel.getByLabel('Why').fill('Not fit for it today');
  await cancel.getByRole('button', { name: 'Cancel the case' }).click();
  await expect(row(page, nth(2)).getByText('Cancelled')).toBeVisible();
  await expect(row(page, nth(2)).getByText('Not fit for it today')).toBeVisible();
  await row(page, nth(2))
    .getByRole('button', { name: `Put back on the list ${nth(2)}` })
    .click();
  await expect(row(page, nth(2)).getByText('Cancelled')).toHaveCount(0);

  await page.reload();
  await shownAt(page, nth(1), '08:15–09:15');
  await shownAt(page, nth(0), '09:45–10:45');
  await shownAt(page, nth(2), '11:00–12:00');
});

test('its urgency changes on the list and shows on the case; back leads to the list', async ({ page }) => {
  await actAs(page, 'person_gwen-sallis');
  await page.goto(LIST);
  await row(page, nth(1))
    .getByRole('button', { name: `Urgency of ${nth(1)}` })
    .click();
  const dialog = page.getByRole('dialog', { name: `Urgency of ${nth(1)}` });
  await dialog.getByRole('radio', { name: 'Today' }).check();
  await dialog.getByRole('button', { name: 'Change the urgency' }).click();
  await expect(dialog).toBeHidden();
  await expect(row(page, nth(1)).getByText('Today', { exact: true })).toBeVisible();
  await row(page, nth(1))
    .getByRole('link', { name: nth(1) })
    .click();
  await expect(page.getByRole('heading', { level: 1, name: nth(1) })).toBeVisible();
  const urgency = page
    .locator('dd')
    .filter({ has: page.getByRole('button', { name: `Urgency of ${nth(1)}` }) });
  await expect(urgency).toContainText('Today');
  await page.goBack();
  await expect(page).toHaveURL(new RegExp(`date=${DAY}`));
  await expect(row(page, nth(1))).toBeVisible();
});

test('a set is promised, is not to be had twice, and is freed', async ({ page, problems }) => {
  problems.expect(/409/);
  await actAs(page, 'person_gwen-sallis');
  await page.goto(LIST);
  const open = async (reference: string) => {
    await row(page, reference)
      .getByRole('button', { name: `Sets for ${reference}` })
      .click();
    return page.getByRole('dialog', { name: `Sets for ${reference}` });
  };
  const promise = async (dialog: Locator) => {
    await dialog.getByRole('combobox', { name: 'Promise a set' }).pressSequentially('SFS-02', { delay: 70 });
    await page.getByRole('option', { name: /SFS-02/ }).click();
    await dialog.getByRole('button', { name: 'Promise it' }).click();
  };
  const first = await open(nth(0));
  await promise(first);
  await expect(first.getByRole('button', { name: 'Free SFS-02' })).toBeVisible();
  await first.getByRole('button', { name: 'Done' }).click();
  await expect(row(page, nth(0)).getByRole('link', { name: 'SFS-02' })).toBeVisible();
  const second = await open(nth(2));
  await promise(second);
  await expect(second.getByRole('alert')).toContainText(`SFS-02 is promised to ${nth(0)}`);
  await second.getByRole('button', { name: 'Done' }).click();
  const again = await open(nth(0));
  await again.getByRole('button', { name: 'Free SFS-02' }).click();
  await expect(again.getByText('No set is promised to it.')).toBeVisible();
});

test('of two people at once the one who saw the list as it was before is refused, and sees it as it is', async ({
  page,
  browser,
  baseURL,
  problems,
}) => {
  problems.expect(/409/);
  await actAs(page, 'person_gwen-sallis');
  await page.goto(LIST);
  await shownAt(page, nth(0), '09:45–10:45');
  const other = await browser.newContext({ baseURL: baseURL ?? '' });
  await actAs(other, 'person_amir-foxton');
  const theirs = await other.newPage();
  await theirs.goto(LIST);
  const move = async (where: Page, time: string) => {
    await row(where, nth(0))
      .getByRole('button', { name: `Move ${nth(0)}` })
      .click();
    const dialog = where.getByRole('dialog', { name: `Move ${nth(0)}` });
    await dialog.getByLabel('Begins').fill(time);
    await dialog.getByRole('button', { name: 'Move the case' }).click();
    return dialog;
  };
  await expect(await move(theirs, '12:30')).toBeHidden();
  await other.close();
  const ours = await move(page, '13:30');
  await expect(ours.getByRole('alert')).toContainText('was changed by someone else');
  await ours.getByRole('button', { name: 'Go back' }).click();
  await shownAt(page, nth(0), '12:30–13:30');
});

test('planning can be stopped, and nothing changes', async ({ page, problems }) => {
  problems.expect(/proposals/);
  await actAs(page, 'person_gwen-sallis');
  // the answer is held back, so that there is something to stop
  await page.route('**/api/v1/theatre-list/proposals', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 3_000));
    await route.continue().catch(() => {});
  });
  await page.goto(LIST);
  await page.getByRole('button', { name: 'Give sets to cases' }).click();
  await expect(page.getByRole('progressbar', { name: 'How far the plan is' })).toBeVisible();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Stopped. Nothing was changed.')).toBeVisible();
  await expect(page.getByRole('progressbar')).toHaveCount(0);
  await expect(page.getByRole('region', { name: 'What would change' })).toHaveCount(0);
});

test('a theatre’s lead and its sessions are changed, and the list says where a case lies outside', async ({
  page,
  problems,
}) => {
  test.setTimeout(120_000);
  problems.expect(/422/);
  await actAs(page, 'person_gwen-sallis');
  await page.goto(`/theatre-list/theatres?from=${DAY}`);
  await page.getByRole('button', { name: `Change the lead of ${THEATRE}` }).click();
  const lead = page.getByRole('dialog', { name: `How long before a case, ${THEATRE}` });
  await lead.getByLabel(/Sets stand in theatre/).fill('75');
  await lead.getByRole('button', { name: 'Change it' }).click();
  await expect(lead.getByRole('alert')).toBeVisible();
  await lead.getByLabel('Why').fill('Across the yard');
  await lead.getByRole('button', { name: 'Change it' }).click();
  await expect(lead).toBeHidden();
  await expect(page.getByRole('row').filter({ hasText: 'Across the yard' })).toContainText('75 min');

  await page.getByRole('button', { name: 'Enter sessions' }).click();
  const enter = page.getByRole('dialog', { name: 'Enter sessions' });
  await enter.getByLabel('Theatre').selectOption({ label: THEATRE });
  await enter.getByLabel('From').fill('14:00');
  await enter.getByLabel('Until').fill('18:00');
  await enter.getByLabel(/For so many weeks/).fill('2');
  await enter.getByLabel('Surgeon').selectOption({ label: 'Tobias Wray' });
  await expectAccessible(page);
  await enter.getByRole('button', { name: 'Enter', exact: true }).click();
  await expect(enter).toBeHidden();
  const session = page.getByRole('row').filter({ hasText: '14:00–18:00' });
  await expect(session).toHaveCount(1);
  await expect(session).toContainText('Tobias Wray');
  const nextWeek = `/theatre-list/theatres?from=${addDays(DAY, 7)}`;
  await page.goto(nextWeek);
  await expect(session).toHaveCount(1);

  await page.goto(LIST);
  await expect(row(page, nth(0)).getByText(/14:00–18:00 Tobias Wray/)).toBeVisible();
  // 12:30 to 13:30 lies in no session of that day, or runs over the end of the morning's
  await expect(row(page, nth(0)).getByText(/outside every session|runs over the end/)).toBeVisible();

  await page.goto(`/theatre-list/theatres?from=${DAY}`);
  await session
    .first()
    .getByRole('button', { name: /^Take out/ })
    .click();
  const out = page.getByRole('dialog', { name: /^Take out/ });
  await out.getByRole('checkbox', { name: 'Those of later weeks too' }).check();
  await out.getByRole('button', { name: 'Take it out' }).click();
  await expect(session).toHaveCount(0);
  await page.goto(nextWeek);
  await expect(page.getByRole('heading', { name: 'Sessions', exact: true })).toBeVisible();
  await expect(session).toHaveCount(0);
});

test('who may not change the list sees it, and nothing to change', async ({ page }) => {
  await actAs(page, 'person_wren-adeyemi');
  await page.goto(LIST);
  await shownAt(page, nth(2), '11:00–12:00');
  await expect(page.getByRole('button', { name: /^(Move|Cancel|Urgency of) / })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Give sets to cases' })).toHaveCount(0);
  await page.goto('/theatre-list/theatres');
  await expect(page.getByRole('heading', { name: 'Sessions', exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: /^(Change|Take out|Enter sessions)/ })).toHaveCount(0);
});
