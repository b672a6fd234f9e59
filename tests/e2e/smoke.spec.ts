import { expect, test } from './harness';

test('the home page answers', async ({ page }) => {
  const answer = await page.goto('/');
  expect(answer?.status()).toBe(200);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
});

test('every entry of the navigation leads to a screen of its own', async ({ page }) => {
  await page.goto('/');
  const links = page.getByRole('navigation').first().getByRole('link');
  const targets = new Set(await links.evaluateAll((all) => all.map((link) => link.getAttribute('href'))));
  expect(targets.size).toBeGreaterThan(2);
  const titles = new Map<string, string>();
  for (const target of targets) {
    if (!target) throw new Error('a link of the navigation leads nowhere');
    const answer = await page.goto(target);
    expect(answer?.status(), target).toBe(200);
    await expect(page.getByRole('heading', { level: 1 }), target).toBeVisible();
    titles.set(await page.title(), target);
  }
  expect([...titles.values()], 'each with a title of its own').toHaveLength(targets.size);
});

test('an address that does not exist says so and leads back', async ({ page, problems }) => {
  problems.expect(/404/);
  const answer = await page.goto('/no-such-screen');
  expect(answer?.status()).toBe(404);
  await expect(page.getByRole('main').getByRole('link').first()).toBeVisible();
});
