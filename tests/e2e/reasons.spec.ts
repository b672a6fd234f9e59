import type { Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { actAs, expect, expectAccessible, test } from './harness';

// a whole flow by several people: on a machine that is busy they take their time
test.describe.configure({ timeout: 180_000 });

/** The humerus that is in theatre as the demo begins, and its set. */
const HUMERUS = '/cases/case_lm-26-u4ht';
const USE = `${HUMERUS}/use`;

const recorded = (page: Page) => page.getByRole('list', { name: 'What is recorded' }).getByRole('listitem');
const saved = (page: Page) =>
  expect(page.getByText('Everything entered is saved')).toBeVisible({ timeout: 20_000 });

test('a manager keeps the hospital’s own reasons: added, moved, retired, and what they say stays', async ({
  page,
  problems,
}) => {
  // the form is sent empty to see everything that is wrong
  problems.expect(/422 .*\/api\/v1\/settings\/reason-codes/);
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/settings/reason-codes');
  await expectAccessible(page);
  const waste = page.getByRole('list', { name: 'Why something was wasted' }).getByRole('listitem');
  const before = await waste.count();
  // everything that is wrong is told at once
  await page.getByRole('button', { name: 'Add the reason' }).click();
  await expect(page.getByText('say it in words').first()).toBeVisible();
  await page.getByRole('combobox', { name: 'A reason for' }).selectOption({ label: 'Waste' });
  await page.getByRole('textbox', { name: 'Code' }).fill('w9');
  await page.getByRole('textbox', { name: 'In words' }).fill('the thread would not hold');
  await page.getByRole('button', { name: 'Add the reason' }).click();
  await expect(waste).toHaveCount(before + 1);
  await expect(waste.last()).toContainText('W9');
  await page.getByRole('button', { name: 'Move up: the thread would not hold' }).click();
  await expect(waste.last()).not.toContainText('W9');
  await page.getByRole('button', { name: 'Retire: the thread would not hold' }).click();
  await expect(waste.filter({ hasText: 'W9' })).toContainText('Retired');
  // whoever may not keep it reads it
  await actAs(page, 'person_wren-adeyemi');
  await page.goto('/settings/reason-codes');
  await expect(waste.filter({ hasText: 'W9' })).toContainText('Retired');
  await expect(page.getByRole('button', { name: /^Retire/ })).toHaveCount(0);
});

test('waste gets its reason by one touch, a delay its minutes and reason, and both are in the report', async ({
  page,
  hospital,
}) => {
  if (!hospital) throw new Error('this test looks into the database');
  await actAs(page, 'person_ruth-okonjo');
  await page.goto(USE);
  await page.locator('aside[data-listening]').waitFor();
  await page.getByRole('button', { name: 'SFT-03', exact: true }).click();
  await page.getByRole('button', { name: 'Dropped or damaged', exact: true }).click();
  await page
    .getByRole('button', { name: /^Cortical screw 3\.5 × 24 mm.*: dropped or damaged$/ })
    .first()
    .click();
  const why = page.getByRole('group', { name: /^Why was Cortical screw/ });
  await why.getByRole('button', { name: 'fell or touched what is not sterile (W3)' }).click();
  await saved(page);
  await expect(recorded(page).first()).toContainText('Reason: fell or touched what is not sterile (W3)');
  // a wrong one is named anew, there or in the list
  await page.getByRole('button', { name: /^Another reason: Cortical screw/ }).click();
  await recorded(page).first().getByRole('button', { name: 'opened by mistake (W5)' }).click();
  await saved(page);
  await expect(recorded(page).first()).toContainText('Reason: opened by mistake (W5)');

  await page.getByRole('button', { name: 'Record a delay' }).click();
  const dialog = page.getByRole('dialog', { name: 'A delay' });
  await dialog.getByRole('button', { name: 'Record the delay' }).click();
  await expect(dialog.getByRole('alert')).toContainText(
    'Say how many minutes, the reason, or what happened.',
  );
  await dialog
    .getByRole('spinbutton', { name: 'Minutes lost' })
    .or(dialog.getByLabel('Minutes lost'))
    .first()
    .fill('25');
  await dialog.getByRole('button', { name: 'a piece had to be fetched (D2)' }).click();
  await dialog.getByRole('combobox', { name: 'When' }).selectOption({ label: 'during the case' });
  await dialog.getByRole('combobox', { name: 'About which set or piece' }).selectOption({ label: 'SFT-03' });
  await expectAccessible(page);
  await dialog.getByRole('button', { name: 'Record the delay' }).click();
  const delays = page.getByRole('list', { name: 'Delays' }).getByRole('listitem');
  await expect(delays).toHaveCount(1);
  await expect(delays).toContainText('25 minutes, during the case');
  await saved(page);
  await expectAccessible(page);

  await page.goto(HUMERUS);
  const told = page.getByRole('list', { name: 'Delay and waste' });
  await expect(told).toContainText(
    'Delay, 25 minutes, during the case, SFT-03, reason a piece had to be fetched (D2)',
  );
  await expect(told).toContainText('dropped or damaged, reason opened by mistake (W5)');

  // the report tells of cases that are over: one of which nobody has recorded what was used
  const file = new Database(hospital.database, { readonly: true });
  const over = file
    .prepare<[], { id: string; reference: string }>(
      `SELECT id, reference FROM cases WHERE ends_at < strftime('%Y-%m-%dT%H:%M:%fZ', 'now')
       AND id IN (SELECT case_id FROM case_picks WHERE how = 'sent') AND id NOT IN (SELECT case_id FROM case_uses)
       ORDER BY starts_at DESC LIMIT 1`,
    )
    .get();
  file.close();
  if (!over) throw new Error('the demo has such a case');
  await page.goto(`/cases/${over.id}/use`);
  await page.locator('aside[data-listening]').waitFor();
  await page.getByRole('button', { name: 'Record a delay' }).click();
  await dialog.getByLabel('Minutes lost').first().fill('25');
  await dialog.getByRole('button', { name: 'a piece had to be fetched (D2)' }).click();
  await dialog.getByRole('combobox', { name: 'When' }).selectOption({ label: 'during the case' });
  await dialog.getByRole('button', { name: 'Record the delay' }).click();
  await expect(delays).toHaveCount(1);
  await saved(page);
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/reports/costs?months=3');
  await expect(page.getByRole('list', { name: 'Delay by reason, minutes in all' })).toContainText(
    'a piece had to be fetched (D2)',
  );
  await expect(page.getByRole('list', { name: 'Waste by reason' })).toContainText('not stated');
  await expectAccessible(page);
  const csv = await (
    await page.request.get('/reports/costs/export?table=delaysByCase&months=3&as=csv')
  ).text();
  expect(csv).toMatch(
    new RegExp(`${over.reference},[^\\n]*,25,a piece had to be fetched \\(D2\\),during the case`),
  );
  // of a surgeon’s own cases only that surgeon is told
  await expect(page.getByText('Your own cases')).toHaveCount(0);
});
