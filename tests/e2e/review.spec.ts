import { actAs, expect, expectAccessible, test } from './harness';

const LEAD = 'person_maurice-oduya';

test('a review: what the figures say, what is proposed becomes a draft, and what it would have meant', async ({
  page,
  problems,
}) => {
  test.setTimeout(180_000);
  await actAs(page, LEAD);
  await page.goto('/configurations/configuration_drt');
  await page.getByRole('link', { name: 'Review its use' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^Review of / })).toBeVisible();
  const lines = page.getByRole('table', { name: 'Lines of the version in force' });
  await expect(lines.getByText('back-up, protected').first()).toBeVisible();
  await expectAccessible(page);

  // sent with nothing changed and no reason, which is refused
  problems.expect(/422/);
  // a back-up is not among what may be proposed; a line that was never used is
  const form = page.locator('form').filter({ has: page.getByLabel('Why') });
  const field = form.getByLabel(/^Pieces of /).first();
  await expect(form.getByText('back-up, protected')).toHaveCount(0);
  await form.getByRole('button', { name: /^Draft version \d+ with 0 changes$/ }).click();
  await expect(page.getByRole('alert').getByText('Change the quantity of at least one line.')).toBeVisible();
  await expect(page.getByRole('alert').getByText('Say why: it stands on the draft.')).toBeVisible();
  await field.fill('0');
  await form.getByLabel('Why').fill('not used in two years');
  await form.getByRole('button', { name: /^Draft version \d+ with 1 change$/ }).click();
  await expect(page).toHaveURL(/\/configurations\/configuration_drt\/approve$/);
  await expect(page.getByText('not used in two years').first()).toBeVisible();

  await page.goto('/configurations/configuration_drt/review');
  const effect = page.getByRole('region', { name: /^If version \d+, in draft, had been in force/ });
  await expect(effect.getByText('Would have run short in')).toBeVisible();
  await expect(effect.getByRole('link', { name: 'Try it on every saved plan' })).toBeVisible();
  // one draft at a time
  await expect(page.getByLabel(/^Pieces of /)).toHaveCount(0);
});

test('cost and waste: charts with their tables and files; a surgeon sees own cases, and nobody another’s', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/reports/costs');
  await expect(page.getByRole('img', { name: /^Cost of cases by month/ }).first()).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Your own cases' })).toHaveCount(0);
  await page.getByText('As a table').first().click();
  const table = page.getByRole('table', { name: 'Cost by month' });
  await expect(table.getByRole('columnheader', { name: 'Share of waste' })).toBeVisible();
  await expectAccessible(page);
  for (const [as, type] of [
    ['csv', 'text/csv'],
    ['xlsx', 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'],
  ]) {
    const file = await page.request.get(`/reports/costs/export?table=months&months=24&as=${as}`);
    expect(file.status()).toBe(200);
    expect(file.headers()['content-type']).toContain(type);
    expect((await file.body()).length).toBeGreaterThan(300);
  }
  expect((await page.request.get('/reports/costs/export?table=surgeons&as=csv')).status()).toBe(400);

  await actAs(page, 'person_tobias-wray');
  await page.goto('/reports/costs');
  await expect(page.getByRole('heading', { name: 'Your own cases' })).toBeVisible();
  const main = page.getByRole('main');
  for (const name of ['Halloran', 'Marlowe', 'Denby']) await expect(main.getByText(name)).toHaveCount(0);
});

test('loss and life: what to use first, where pieces vanish, and what is due, each with its working', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await actAs(page, 'person_dilys-harrow');
  await page.goto('/reports/loss');
  const lots = page.getByRole('table', { name: 'What to use or swap first' });
  await expect(lots.getByRole('row')).not.toHaveCount(0);
  await expect(
    page.getByRole('list', { name: 'Pieces not found, by step' }).getByText('at the count on the bench'),
  ).toBeVisible();
  await expectAccessible(page);
  await lots
    .getByRole('link', { name: /^\d+\.\d$/ })
    .first()
    .click();
  await expect(page).toHaveURL(/\/calculations\/expiry-loss\?input=/);
  await expect(page.getByText('Expected to be lost').first()).toBeVisible();
});
