import { actAs, expect, test } from './harness';

const CASE = '/cases/case_lm-26-9rtb';
const SURGEON = 'person_ines-halloran';
const TECHNICIAN = 'person_jolene-stott';
const MOST_TRAYS = 15;

test('from a confirmed plan to the kit, its papers, and what a set leaving the store does to it', async ({
  page,
}) => {
  await actAs(page, SURGEON);

  // today’s page leads to the kit, which is ready with one tray
  await page.goto('/');
  // it leads to the case until its kit is worked out
  const link = page.getByRole('link', { name: 'LM-26-9RTB' });
  await expect(link).toHaveAttribute('href', `${CASE}/kit`, { timeout: 20_000 });
  await link.click();
  await expect(page).toHaveURL(`${CASE}/kit`);
  await expect(page.getByRole('heading', { name: 'Ready', exact: true, level: 2 })).toBeVisible();
  const take = page.getByRole('list', { name: 'Trays and packs to take' });
  await expect(take.getByRole('link', { name: 'DRT-01' })).toBeVisible();

  // both papers of the case, as PDF
  for (const paper of ['pick-list', 'lay-up-card']) {
    const answer = await page.request.get(`${CASE}/${paper}`);
    expect(answer.status(), paper).toBe(200);
    expect(answer.headers()['content-type'], paper).toBe('application/pdf');
    expect((await answer.body()).subarray(0, 5).toString(), paper).toBe('%PDF-');
  }

  // a surgeon does not open sets: the screen does not offer it, and the server refuses whoever asks all the same
  await page.goto('/sets/set_drt-01');
  await expect(page.getByRole('link', { name: 'Count sheet' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Open on the bench' })).toHaveCount(0);
  const refused = await page.request.post('/api/v1/sets/set_drt-01/open', { data: { baseRevision: 1 } });
  expect(refused.status()).toBe(403);
  expect(await refused.text()).toContain('This is not for a surgeon.');

  // a technician does, and is asked twice; the kit no longer counts on a tray that is open, and takes what else is in
  // store as long as there is any
  await actAs(page, TECHNICIAN);
  const ready = page.getByRole('heading', { name: 'Ready', exact: true, level: 2 });
  const opened: string[] = [];
  for (let code: string | null = 'DRT-01'; code !== null && opened.length < MOST_TRAYS; ) {
    await page.goto(`${CASE}/kit`);
    await take.getByRole('link', { name: code, exact: true }).click();
    await page.getByRole('button', { name: 'Open on the bench' }).click();
    await page.getByRole('button', { name: `Open ${code}` }).click();
    await expect(page.getByText('On bench').first()).toBeVisible();
    opened.push(code);

    await page.goto(`${CASE}/kit`);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    for (const gone of opened)
      await expect(take.getByRole('link', { name: gone, exact: true })).toHaveCount(0);
    code = (await ready.count()) > 0 ? await take.getByRole('link').first().textContent() : null;
  }
  expect(opened.length, 'the store has more than one way to serve this plan').toBeGreaterThan(1);
  await expect(ready).toHaveCount(0);

  // and the case is at risk on today’s page
  await page.goto('/');
  const atRisk = page.getByRole('list', { name: 'Cases at risk' });
  await expect(atRisk.getByRole('link', { name: 'LM-26-9RTB' })).toBeVisible();
});
