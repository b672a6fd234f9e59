import type { Page } from '@playwright/test';
import { actAs, expect, expectAccessible, test } from './harness';

const MANAGER = 'person_gwen-sallis';
/** The demo's busiest day is the one after it was loaded. */
const REPORT = '/reports/day-before';

/** Cancels a case of the day as another person would, from its own screen's address. */
async function cancelAsAnother(page: Page, reference: string, because: string) {
  const list = await page.request.get('/api/v1/theatre-list/standings');
  expect(list.ok()).toBe(true);
  await page.goto('/cases');
  const href = await page.getByRole('link', { name: reference }).first().getAttribute('href');
  const id = href?.split('/')[2] ?? '';
  const sent = await page.request.post(`/api/v1/cases/${id}/cancel`, {
    headers: { 'Sec-Fetch-Site': 'same-origin' },
    data: { baseRevision: 1, because },
  });
  expect(sent.status(), await sent.text()).toBe(200);
}

test('the day before: what to do, theatre by theatre, and what another person changes is told until it is marked as seen', async ({
  page,
  context,
}) => {
  test.setTimeout(120_000);
  await actAs(page, MANAGER);
  await page.goto(REPORT);
  await expect(page.getByRole('heading', { level: 1, name: /^Day-before report, / })).toBeVisible();
  await expect(page.getByRole('list', { name: 'What to do first' }).getByRole('listitem')).not.toHaveCount(0);
  await expect(page.getByRole('heading', { level: 3, name: 'Theatre 1' })).toBeVisible();
  await expect(page.getByRole('table', { name: 'Cases in Theatre 1' }).getByText('LM-26-M4VQ')).toBeVisible();
  const held = page.getByRole('listitem').filter({ hasText: 'Promise not kept: held' });
  await expect(held.getByRole('link', { name: 'DFF-01' })).toHaveAttribute('href', '/sets/set_dff-01#hold');

  // before the first mark there is nothing to compare with, and that is said
  const changed = page.getByRole('region', { name: 'Changed since you looked' });
  await expect(changed.getByText('You have not marked this day as seen yet')).toBeVisible();
  await changed.getByRole('button', { name: 'I have seen this' }).click();
  await expect(changed.getByText('since the day-before report as you marked it seen')).toBeVisible();
  await expect(changed.getByText('Nothing changed.')).toBeVisible();
  await expectAccessible(page);

  // another person cancels a case: it is told with who and why, on the page and on the list of that day
  const other = await context.newPage();
  await actAs(other, 'person_amir-foxton');
  await cancelAsAnother(other, 'LM-26-D3XE', 'no recovery bed');
  await other.close();
  await actAs(page, MANAGER);
  await page.goto(REPORT);
  const line = changed.getByRole('listitem').filter({ hasText: 'LM-26-D3XE' });
  await expect(line.getByText('Cancelled', { exact: true })).toBeVisible();
  await expect(line).toContainText('Case cancelled by Amir Foxton');
  await expect(line).toContainText('no recovery bed');

  // a reload loses nothing; marking does away with it
  await page.reload();
  await expect(line).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Theatre list' }).last().click();
  await expect(page.getByRole('region', { name: 'Changed since you looked' })).toContainText('LM-26-D3XE');
  await page.goto(REPORT);
  await changed.getByRole('button', { name: 'I have seen this' }).click();
  await expect(line).toHaveCount(0);
  await expect(changed.getByText('Nothing changed.')).toBeVisible();
});

test('looks are a person’s own, and a page that was left open takes none back', async ({ page }) => {
  await actAs(page, MANAGER);
  await page.goto(REPORT);
  const changed = page.getByRole('region', { name: 'Changed since you looked' });
  const first = page.waitForRequest('**/api/v1/reports/looks');
  await changed.getByRole('button', { name: 'I have seen this' }).click();
  const old = (await first).postDataJSON() as { shownAt: string };
  await expect(page.getByText('From now on, what changes')).toBeVisible();
  // the page is made anew and marked once more, and then the older one is sent again
  await page.goto(REPORT);
  const second = page.waitForResponse('**/api/v1/reports/looks');
  await changed.getByRole('button', { name: 'I have seen this' }).click();
  const kept = (await (await second).json()) as { shownAt: string };
  expect(kept.shownAt > old.shownAt).toBe(true);
  const again = await page.request.post('/api/v1/reports/looks', {
    headers: { 'Sec-Fetch-Site': 'same-origin' },
    data: old,
  });
  expect(await again.json()).toEqual(kept);

  await actAs(page, 'person_wren-adeyemi');
  await page.goto(REPORT);
  await expect(changed.getByText('You have not marked this day as seen yet')).toBeVisible();
});

test('the morning report is of today, or of the day asked for, and leads to its paper', async ({ page }) => {
  await actAs(page, MANAGER);
  await page.goto('/theatre-list');
  await page.getByRole('link', { name: 'Morning report' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^Morning report, / })).toBeVisible();
  for (const path of ['/reports/morning', '/reports/day-before']) {
    await page.goto(path);
    const href = await page.getByRole('link', { name: 'Print' }).getAttribute('href');
    const answer = await page.request.get(href ?? '');
    expect(answer.status()).toBe(200);
    expect(answer.headers()['content-type']).toBe('application/pdf');
    expect((await answer.body()).subarray(0, 8).toString()).toBe('%PDF-1.7');
  }
  await page.goto('/reports/morning?day=2026-02-31');
  await expect(page.getByText('today', { exact: true })).toBeVisible();
  await page.goto('/reports/morning?day=2020-01-01');
  await expect(page.getByText('No case on this day')).toBeVisible();
  await expectAccessible(page);
});
