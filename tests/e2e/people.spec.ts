import { DEMO_BADGES, DEMO_PASSWORD, DEMO_PIN } from '@/lib/people/demo';
import { ALONE, actAs, expect, expectAccessible, test } from './harness';
import { scan } from './scanning-keys';

const SIGNED_OUT = { cookies: [], origins: [] };
/** Between two keys of a hand, in milliseconds: what comes faster is a scanner. */
const BY_HAND = { delay: 70 };

test.describe('somebody who is not signed in', () => {
  test.use({ storageState: SIGNED_OUT });

  test('is led to sign in and back, by keyboard alone, and signs out again', async ({ page, problems }) => {
    problems.expect(/401/);
    await page.goto('/stock');
    await expect(page).toHaveURL('/sign-in?from=%2Fstock');
    await expect(page.getByRole('navigation', { name: 'Main' })).toHaveCount(0);
    await expectAccessible(page);
    await page.getByLabel('Name', { exact: true }).focus();
    await page.keyboard.type('wren adeyemi', BY_HAND);
    await page.keyboard.press('Tab');
    await page.keyboard.type('not the password', BY_HAND);
    await page.keyboard.press('Enter');
    await expect(page.getByText('The name and the password do not go together.').first()).toBeVisible();
    await expect(page.getByLabel('Password', { exact: true })).toBeFocused();
    await page.keyboard.type(DEMO_PASSWORD, BY_HAND);
    await page.keyboard.press('Enter');
    await expect(page).toHaveURL('/stock');
    // a page that came as text does not hear keys yet
    await page.locator('aside[data-listening]').waitFor();
    const menu = page.getByRole('button', { name: /Wren Adeyemi/ });
    await menu.press('Enter');
    await page.getByRole('button', { name: 'Sign out' }).press('Enter');
    await expect(page).toHaveURL('/sign-in');
    await page.goto('/stock');
    await expect(page).toHaveURL(/\/sign-in/);
  });

  test('waits longer with every wrong password, and is told how long', async ({ page, problems }) => {
    problems.expect(/401|429/);
    await page.goto('/sign-in?name=Kofi%20Brandreth');
    for (let tries = 0; tries < 3; tries += 1) {
      await page.getByLabel('Password', { exact: true }).fill('not the password');
      await page.getByRole('button', { name: 'Sign in' }).click();
      await expect(page.getByLabel('Password', { exact: true })).toHaveValue('');
    }
    await expect(page.getByText('Wait 1 second before the next try.').first()).toBeVisible();
  });

  test('finds the demo’s people by role, each one press away', async ({ page }) => {
    await page.goto('/sign-in');
    await page.getByRole('link', { name: 'Hettie Crane' }).click();
    await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Hettie Crane');
    await expect(page.getByLabel('Password', { exact: true })).toBeFocused();
  });
});

test('a page that is not for one’s role says so with 403', async ({ page, problems }) => {
  problems.expect(/403/);
  const answer = await page.goto('/people');
  expect(answer?.status()).toBe(403);
  await expect(page.getByRole('heading', { level: 1, name: 'Not for your role' })).toBeVisible();
  await expect(page.getByText('A sterile services technician does not work on this page')).toBeVisible();
});

test(
  'at a workstation a badge and its PIN change the person within two seconds; what was begun stays',
  ALONE,
  async ({ page, problems }) => {
    problems.expect(/401/);
    await actAs(page, 'person_edda-winslow');
    await page.goto('/people/workstations');
    const name = `Bench ${Date.now() % 100_000}`;
    await page.getByLabel('Name of this workstation').fill(name);
    await page.getByRole('button', { name: 'Enrol this browser' }).click();
    await expect(page.getByText(`This browser is ${name}.`)).toBeVisible();

    await page.goto('/catalogue');
    await page.getByRole('searchbox', { name: 'Search' }).fill('half-done');
    // a scanner types: one key after the other, faster than any hand, and Enter
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.locator('aside[data-listening]').waitFor();
    await scan(page, DEMO_BADGES['person_tomas-birkett'] ?? '');
    const dialog = page.getByRole('dialog', { name: 'Badge read' });
    await expect(dialog.getByLabel('Your PIN')).toBeFocused();
    expect(await page.content()).not.toContain(DEMO_BADGES['person_tomas-birkett']);
    await page.keyboard.type('000000', BY_HAND);
    await page.keyboard.press('Enter');
    await expect(dialog.getByText('The badge and the PIN do not go together.')).toBeVisible();
    await page.keyboard.type(DEMO_PIN, BY_HAND);
    const began = Date.now();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('button', { name: /Tomas Birkett/ })).toBeVisible();
    expect(Date.now() - began, 'milliseconds from the PIN to the other person').toBeLessThan(2000);
    await expect(page.getByRole('searchbox', { name: 'Search' })).toHaveValue('half-done');
    await expect(page).toHaveURL(/\/catalogue/);
  },
);

test('a session that is over locks the page, and what was begun on it is there after signing in', async ({
  page,
  problems,
}) => {
  problems.expect(/401/);
  await actAs(page, 'person_dilys-harrow');
  await page.goto('/catalogue');
  await page.getByRole('searchbox', { name: 'Search' }).fill('half-done');
  // ended elsewhere, as an administrator or the clock would
  await page.request.post('/api/v1/people/sign-out');
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  const dialog = page.getByRole('dialog', { name: 'Nobody is signed in any more' });
  await expect(dialog).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(dialog).toBeVisible();
  await dialog.getByLabel('Password', { exact: true }).fill(DEMO_PASSWORD);
  await dialog.getByRole('button', { name: 'Sign in and go on' }).click();
  await expect(dialog).toHaveCount(0);
  await expect(page.getByRole('searchbox', { name: 'Search' })).toHaveValue('half-done');
  await expect(page.getByRole('button', { name: /Dilys Harrow/ })).toBeVisible();
});

test('an administrator adds a person, who must choose a password of their own', async ({
  page,
  browser,
  baseURL,
}) => {
  await actAs(page, 'person_ravi-thorne');
  await page.goto('/people/new');
  const name = `Odile Farrant ${String.fromCharCode(...[...String(Date.now() % 1e6)].map((digit) => 65 + Number(digit)))}`;
  await page.getByLabel('Name').fill(name);
  await page.getByLabel('Role').selectOption('technician');
  await page.getByRole('button', { name: 'Add this person' }).click();
  const given = await page.getByText(/^[2-9A-Z]{4}(-[2-9A-Z]{4}){3}$/).textContent();
  const context = await browser.newContext({ storageState: SIGNED_OUT, ...(baseURL ? { baseURL } : {}) });
  const other = await context.newPage();
  await other.goto('/sign-in');
  await other.getByLabel('Name', { exact: true }).fill(name);
  await other.getByLabel('Password', { exact: true }).fill(given ?? '');
  await other.getByRole('button', { name: 'Sign in' }).click();
  await expect(other).toHaveURL('/account');
  await other.goto('/sets');
  await expect(other).toHaveURL('/account');
  const form = other.getByRole('region', { name: 'Password' });
  await form.getByLabel('Present password').fill(given ?? '');
  await form.getByLabel('New password').fill('tea rose lathe moss');
  await form.getByRole('button', { name: 'Change the password' }).click();
  await expect(other.getByText('Choose a password')).toHaveCount(0);
  await other.goto('/sets');
  await expect(other).toHaveURL('/sets');
  await context.close();
});
