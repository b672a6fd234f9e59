import { actAs, expect, expectAccessible, test } from './harness';

test('a manager reads how the program stands, the worst first, each with what to do', async ({ page }) => {
  await actAs(page, 'person_gwen-sallis');
  await page.goto('/health');
  await expect(page.getByRole('heading', { level: 1, name: 'Health' })).toBeVisible();
  const lights = page.getByRole('main').getByRole('listitem');
  const writing = lights.filter({ hasText: 'Writing' });
  await expect(writing).toContainText(/A small write reached the disk in (less than 1|\d+) ms\./);
  await expect(lights.filter({ hasText: 'Backup' }).first()).toContainText(
    'The demo can be put back at any time',
  );
  // the heads of a demo lie beside its database
  await expect(lights.first()).toContainText(
    'What to do: Name a file on another disk or machine in KITWRIGHT_HEADS.',
  );
  await expectAccessible(page);
});

test('a monitor is told names and states, and nothing else, without signing in', async ({ request }) => {
  const live = await request.get('/health/live', { headers: { cookie: '' } });
  expect(await live.json()).toEqual({ state: 'well' });
  const ready = await request.get('/health/ready', { headers: { cookie: '' } });
  expect(ready.status()).toBe(200);
  expect(ready.headers()['cache-control']).toBe('no-store');
  const { state, lights } = await ready.json();
  expect(['well', 'look']).toContain(state);
  expect(lights).toMatchObject({ writing: 'well', ledger: 'well', clock: 'well' });
  for (const said of Object.values(lights)) expect(['well', 'look', 'wrong', 'unknown']).toContain(said);
});
