import { expect, test } from './harness';
import { actAs } from './planning';

const CASE = '/cases/case_lm-26-9rtb';
const SURGEON = 'person_ines-halloran';
const TECHNICIAN = 'person_jolene-stott';

test('from a confirmed plan to the kit, its papers, and what a set leaving the store does to it', async ({
  page,
  baseURL,
}) => {
  const home = baseURL ?? '';
  await actAs(page, SURGEON, home);

  // today’s page leads to the kit, which is ready with one tray
  await page.goto('/');
  await page.getByRole('link', { name: 'LM-26-9RTB' }).click();
  await expect(page).toHaveURL(`${CASE}/kit`);
  await expect(page.getByRole('heading', { name: 'Ready', level: 2 })).toBeVisible();
  const take = page.getByRole('list', { name: 'Trays and packs to take' });
  await expect(take.getByRole('link', { name: 'DRT-01' })).toBeVisible();

  // both papers of the case, as PDF
  for (const paper of ['pick-list', 'lay-up-card']) {
    const answer = await page.request.get(`${CASE}/${paper}`);
    expect(answer.status(), paper).toBe(200);
    expect(answer.headers()['content-type'], paper).toBe('application/pdf');
    expect((await answer.body()).subarray(0, 5).toString(), paper).toBe('%PDF-');
  }

  // a surgeon does not open sets; a technician does, and is asked twice
  await page.goto('/sets/set_drt-01');
  await page.getByRole('button', { name: 'Open on the bench' }).click();
  await page.getByRole('button', { name: 'Open DRT-01' }).click();
  await expect(page.getByText('Ines Halloran can’t open a set.')).toBeVisible();

  await actAs(page, TECHNICIAN, home);
  await page.goto('/sets/set_drt-01');
  await page.getByRole('button', { name: 'Open on the bench' }).click();
  await page.getByRole('button', { name: 'Open DRT-01' }).click();
  await expect(page.getByText('On bench').first()).toBeVisible();

  // the tray is open, so the kit no longer counts on it: it says what it takes instead, or what is short
  await page.goto(`${CASE}/kit`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(take.getByRole('link', { name: 'DRT-01' })).toHaveCount(0);
  await expect(page.getByRole('heading', { name: 'Ready', level: 2 })).toHaveCount(0);
  await expect(page.getByText('DRT-01').first(), 'the tray that would help is named').toBeVisible();

  // and the case is at risk on today’s page
  await page.goto('/');
  const atRisk = page.getByRole('list', { name: 'Cases at risk' });
  await expect(atRisk.getByRole('link', { name: 'LM-26-9RTB' })).toBeVisible();
});
