import { addDays } from '@/lib/quantities/plainDate';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { actAs, expect, expectAccessible, test } from './harness';

test.describe.configure({ mode: 'serial' });

test('a plan that was looked at is not kept once the list is another', async ({
  page,
  browser,
  baseURL,
  problems,
}) => {
  test.setTimeout(120_000);
  problems.expect(/409/);
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/theatre-list/week');
  await page.getByRole('button', { name: 'Give sets to cases' }).click();
  const plan = page.getByRole('region', { name: 'What would change' });
  await expect(plan.getByText('Nothing is written yet.')).toBeVisible({ timeout: 30_000 });

  const other = await browser.newContext({ baseURL: baseURL ?? '' });
  await actAs(other, 'person_amir-foxton');
  const theirs = await other.newPage();
  await theirs.goto(`/theatre-list?date=${addDays(wallClock(new Date().toISOString()).date, 5)}`);
  await theirs
    .getByRole('button', { name: /^Cancel LM-/ })
    .first()
    .click();
  await theirs.getByLabel('Why').fill('Put off to another week');
  await theirs.getByRole('button', { name: 'Cancel the case' }).click();
  await expect(theirs.getByText('Put off to another week')).toBeVisible();
  await other.close();

  await plan.getByRole('button', { name: 'Keep this plan' }).click();
  await expect(page.getByText(/The list changed since this plan was worked out/).first()).toBeVisible();
});

test('the week counts how cases stand; sets are given as was looked at, can be left, and lead to a day', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/theatre-list/week');
  const week = page.getByRole('table', { name: 'The week by day and theatre' });
  await expect(week.getByText('working it out …')).toHaveCount(0, { timeout: 30_000 });
  await expect(week.getByText(/^\d+ × (Ready|Waiting|Short|No set free|Not planned)/).first()).toBeVisible();
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Give sets to cases' }).click();
  const plan = page.getByRole('region', { name: 'What would change' });
  await expect(plan.getByText('Nothing is written yet.')).toBeVisible({ timeout: 30_000 });
  await expectAccessible(page);
  await plan.getByRole('button', { name: 'Leave the list as it is' }).click();
  await expect(plan).toHaveCount(0);
  await page.getByRole('button', { name: 'Give sets to cases' }).click();
  await plan.getByRole('button', { name: 'Keep this plan' }).click();
  await expect(page.getByText(/The plan is kept: \d+ cases? changed/)).toBeVisible();
  // asked again, there is nothing left to change
  await page.getByRole('button', { name: 'Give sets to cases' }).click();
  await expect(plan.getByText('Every case keeps what it has.')).toBeVisible({ timeout: 30_000 });
  await plan.getByRole('button', { name: 'Close' }).click();

  const day = addDays(wallClock(new Date().toISOString()).date, 1);
  await week.getByRole('link', { name: dayWords(day) }).click();
  await expect(page).toHaveURL(new RegExp(`theatre-list\\?date=${day}`));
  await expect(page.getByText('working it out …')).toHaveCount(0, { timeout: 30_000 });
});
