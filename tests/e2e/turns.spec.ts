import type { Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { expect, expectAccessible, test } from './harness';
import { actAs } from './harness/act-as';
import { scan as typeAsScanner } from './scanning-keys';

const TECHNICIAN = 'person_wren-adeyemi';
const OTHER = 'person_tomas-birkett';
const LEAD = 'person_maurice-oduya';

/** Scans once the page hears the scanner. */
async function scan(page: Page, text: string): Promise<void> {
  await page.locator('aside[data-listening]').waitFor();
  await typeAsScanner(page, text);
}

/** The code of the first set at a step of the board. */
async function firstAt(page: Page, step: string): Promise<string> {
  const link = page.getByRole('list', { name: step, exact: true }).getByRole('link').first();
  return (await link.textContent()) ?? '';
}

test('a dirty return goes to washing and to the bench by big buttons, survives a reload and the way back', async ({
  page,
}) => {
  await actAs(page, TECHNICIAN);
  await page.goto('/work/board');
  const code = await firstAt(page, 'In theatre');
  const receive = page.getByRole('button', { name: `Receive ${code}` });
  await expect(receive).toBeVisible();
  expect((await receive.boundingBox())?.height).toBeGreaterThanOrEqual(48);
  await receive.click();
  const coming = page.getByRole('list', { name: 'Coming back', exact: true });
  await expect(coming.getByRole('link', { name: code, exact: true })).toBeVisible();
  await page.reload();
  await coming.getByRole('button', { name: `Put into washing ${code}` }).click();
  const washing = page.getByRole('list', { name: 'Washing', exact: true });
  await expect(washing.getByRole('link', { name: code, exact: true })).toBeVisible();

  await washing.getByRole('button', { name: `Take out of washing ${code}` }).click();
  const dialog = page.getByRole('dialog', { name: `${code} comes out of washing` });
  await dialog.getByRole('button', { name: 'Clean: to the bench' }).click();
  await expect(
    page.getByRole('list', { name: 'On bench', exact: true }).getByRole('link', { name: code, exact: true }),
  ).toBeVisible();

  await page.getByRole('link', { name: code, exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: code })).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: 'On bench' }).first()).toHaveAttribute(
    'aria-current',
    'step',
  );
  await page.goBack();
  await expect(
    page.getByRole('list', { name: 'On bench', exact: true }).getByRole('link', { name: code, exact: true }),
  ).toBeVisible();
});

test('by scanner: a label opens its set with the next step in focus, and Enter takes it; found dirty, it is held', async ({
  page,
}) => {
  await actAs(page, TECHNICIAN);
  await page.goto('/work/board');
  const code = await firstAt(page, 'Coming back');
  await scan(page, code);
  await expect(page.getByRole('heading', { level: 1, name: code })).toBeVisible();
  const next = page.getByRole('button', { name: `Put into washing ${code}` });
  await expect(next).toBeFocused();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: `Take out of washing ${code}` }).click();
  const dialog = page.getByRole('dialog', { name: `${code} comes out of washing` });
  await dialog.getByLabel('Where it was dirty').fill('Dried blood in a bore');
  await dialog.getByRole('button', { name: 'Dirty: hold it' }).click();
  await expect(page.getByText('held, because it was dirty after wash')).toBeVisible();
  await expect(page.getByText('“Dried blood in a bore”')).toBeVisible();
  // who may not lift it is not offered to
  await expect(page.getByRole('button', { name: 'Lift the hold' })).toHaveCount(0);
  await page.goto('/holds');
  await expect(page.getByRole('listitem').filter({ hasText: code })).toContainText('It was dirty after wash');
});

test('a set is held with its reason, and lifted only by who proves who they are; the holder is told', async ({
  page,
  problems,
}) => {
  problems.expect(/422/);
  await actAs(page, TECHNICIAN);
  await page.goto('/work/board');
  const code = await firstAt(page, 'On bench');
  await page.getByRole('link', { name: code, exact: true }).click();
  await page.getByRole('button', { name: 'Hold', exact: true }).click();
  const hold = page.getByRole('dialog', { name: `Hold ${code}` });
  await hold.getByRole('button', { name: `Hold ${code}` }).click();
  await expect(hold.getByText('Choose why it is held.')).toBeVisible();
  await hold.getByRole('radio', { name: 'Its count is disputed' }).check();
  await hold.getByLabel('What was seen').fill('Two counters, two numbers');
  await hold.getByRole('button', { name: `Hold ${code}` }).click();
  await expect(page.getByText('held, because its count is disputed')).toBeVisible();
  const address = page.url();

  await actAs(page, LEAD);
  await page.goto(address);
  await page.getByRole('button', { name: 'Lift the hold' }).click();
  const lift = page.getByRole('dialog', { name: `Lift the hold of ${code}` });
  await lift.getByRole('radio', { name: /^On bench/ }).check();
  await lift.getByLabel('Why the hold is lifted').fill('Counted a third time, together');
  await lift.getByRole('button', { name: 'Go on to prove who you are' }).click();
  await expect(lift.getByText('I lift this hold')).toBeVisible();
  await lift.getByLabel(/^Your/).fill('not my password');
  await lift.getByRole('button', { name: 'Lift the hold' }).click();
  await expect(lift.getByText(/not right|wrong/i).first()).toBeVisible();
  await page.waitForTimeout(1500);
  await lift.getByLabel(/^Your/).fill(DEMO_PASSWORD);
  await lift.getByRole('button', { name: 'Lift the hold' }).click();
  await expect(page.getByText('held, because its count is disputed')).toHaveCount(0);

  await actAs(page, TECHNICIAN);
  await page.goto('/notices');
  await expect(page.getByText(`lifted the hold of ${code}`)).toBeVisible();
  await page.getByRole('button', { name: 'Mark these as seen' }).click();
  await expect(page.getByRole('heading', { name: 'Seen' })).toBeVisible();
});

test('of two people who press at once the second is told who was first, and nothing is done twice', async ({
  page,
  browser,
  problems,
}) => {
  problems.expect(/409/);
  await actAs(page, TECHNICIAN);
  await page.goto('/work/board');
  const code = await firstAt(page, 'In theatre');
  const window = await browser.newContext();
  await actAs(window, OTHER);
  const second = await window.newPage();
  await second.goto(page.url());
  await expect(second.getByRole('button', { name: `Receive ${code}` })).toBeVisible();
  await page.getByRole('button', { name: `Receive ${code}` }).click();
  await expect(
    page
      .getByRole('list', { name: 'Coming back', exact: true })
      .getByRole('link', { name: code, exact: true }),
  ).toBeVisible();
  // without a reload, the second still sees the set in theatre
  const answer = second.waitForResponse(/\/receive$/);
  await second.getByRole('button', { name: `Receive ${code}` }).click();
  expect((await answer).status()).toBe(409);
  const coming = second.getByRole('list', { name: 'Coming back', exact: true });
  await expect(coming.getByRole('link', { name: code, exact: true })).toBeVisible();
  // the button went with its row; what it was told stays until it is closed
  const told = second.getByText(/was changed meanwhile: it is coming back since .* by Wren Adeyemi/);
  await expect(told).toHaveCount(1);
  await expect(told).toBeVisible();
  await window.close();
});

test('a place takes what is scanned there', async ({ page }) => {
  await actAs(page, LEAD);
  await page.goto('/work/board');
  const code = await firstAt(page, 'On bench');
  await page.goto('/places/place_store-a');
  await scan(page, code);
  const put = page.getByRole('list', { name: /^Put in .* just now/ });
  await expect(put.getByText('lies here now')).toBeVisible();
  await expect(
    page.getByRole('list', { name: /^Sets in/ }).getByRole('link', { name: code, exact: true }),
  ).toBeVisible();
  await expectAccessible(page);
});
