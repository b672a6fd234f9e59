import type { Locator, Page } from '@playwright/test';
import { expect, expectAccessible, setScreen, test } from './harness';

const SURGEON = 'person_ines-halloran';
const OTHER_SURGEON = 'person_sunita-marlowe';

/** Acts as somebody, as the chooser in the header would set it. */
async function actAs(page: Page, person: string, address: string) {
  await page.context().addCookies([{ name: 'acting', value: person, url: address }]);
}

/**
 * A date in the distant weeks, so that no case of the demo is in the way. Each test has its own day, and each run too:
 * a running server keeps what was booked before.
 */
function dayFromNow(days: number): string {
  return new Date(Date.now() + (days + RUN * 10) * DAY_MS).toISOString().slice(0, 10);
}
const DAY_MS = 86_400_000;
const RUN = Math.floor(Date.now() / 60_000) % 150;

async function bookCase(
  page: Page,
  { day, region = 'Forearm shaft', start }: { day: string; region?: string; start?: string },
) {
  if (!start) await page.goto('/cases/new');
  await page.getByLabel('Region').selectOption({ label: region });
  await page.getByRole('radio', { name: 'Left' }).check();
  await page.getByLabel('Theatre').selectOption({ label: 'Theatre 2' });
  await page.getByLabel('Date').fill(day);
  await page.getByLabel('Begins at').fill('08:30');
  await page.getByLabel('Minutes').fill('10');
  await page.getByRole('button', { name: 'Book the case' }).click();
  await page.waitForURL(/\/cases\/case_[^/]+\/plan$/);
}

async function choosePlate(page: Page, code: string) {
  await page.getByRole('button', { name: 'Choose a plate' }).click();
  const dialog = page.getByRole('dialog', { name: 'Add a plate' });
  await dialog.getByLabel('Find a plate').fill(code);
  await expect(dialog.getByText(/1 of \d+ plates, by name/)).toBeVisible();
  await dialog.getByRole('button', { name: new RegExp(code) }).click();
  await expect(dialog).toBeHidden();
}

const holeOf = (page: Page, id: string): Locator => page.locator(`g[data-hole="${id}"]`);
const saved = (page: Page) => expect(page.locator('[data-save="saved"]')).toBeVisible();
const stops = (page: Page) => page.getByRole('status').getByText(/^Stop: \d+$/);

test.beforeEach(async ({ page, baseURL }) => {
  await actAs(page, SURGEON, baseURL ?? '');
});

test('a surgeon books a case, plans it, confirms it, changes it and sees what changed', async ({ page }) => {
  await bookCase(page, { day: dayFromNow(40) });
  await choosePlate(page, 'CR-Q35-N-07');

  // compression: two offset screws, by pointing at several holes
  await page.getByRole('button', { name: 'Choose several' }).click();
  await holeOf(page, 'S3').click();
  await holeOf(page, 'S5').click();
  await page.getByRole('radio', { name: 'Offset' }).check();
  await page.getByRole('radio', { name: /Carrowby cortical 3\.5/ }).check();
  await page.getByRole('button', { name: '16', exact: true }).click();
  await expect(holeOf(page, 'S3')).toHaveAccessibleName(/offset, Carrowby cortical 3\.5, 16 mm/);
  await expect(holeOf(page, 'S5')).toHaveAccessibleName(/offset, Carrowby cortical 3\.5, 16 mm/);
  await page.getByRole('button', { name: 'Choose several' }).click();

  // a stop appears beside the hole and in the list, and vanishes
  await holeOf(page, 'S1').click();
  await page.getByRole('radio', { name: 'Locked' }).check();
  await page.getByRole('radio', { name: /Carrowby cortical 3\.5/ }).check();
  await expect(stops(page)).not.toHaveText('Stop: 0');
  await expect(holeOf(page, 'S1')).toHaveAccessibleName(/stop$/);
  await expect(page.getByRole('row', { name: /^S1/ }).getByText('Stop').first()).toBeVisible();
  await page.getByRole('radio', { name: /Linnet 3\.5 locking/ }).check();
  await page.getByRole('textbox', { name: 'Length, mm', exact: true }).fill('18');
  await expect(stops(page)).toHaveText('Stop: 0');

  // a lag screw outside the plate
  await page.getByRole('button', { name: /Free screws/ }).click();
  await page.getByLabel('Add a free screw of').selectOption({ label: 'Carrowby cortical 3.5' });
  await page
    .getByRole('group', { name: 'Free lag screw L1' })
    .getByRole('textbox', { name: 'Length, mm' })
    .fill('24');
  await saved(page);

  // reload in mid-work loses nothing
  await page.getByRole('button', { name: /^P1/ }).click();
  await holeOf(page, 'S7').click();
  await page.getByRole('radio', { name: 'Left empty' }).check();
  await page.reload();
  await expect(holeOf(page, 'S7')).toHaveAccessibleName(/left empty/);
  await expect(holeOf(page, 'S1')).toHaveAccessibleName(/locked, Linnet 3\.5 locking, 18 mm/);
  await expect(page.getByRole('button', { name: 'Free screws (1)' })).toBeVisible();

  await page.getByRole('button', { name: 'Leave the undecided empty' }).click();
  await saved(page);
  await page.getByRole('button', { name: 'Confirm version 1' }).click();
  await page.getByRole('button', { name: 'Confirm this plan' }).click();
  await page.waitForURL(/\/cases\/case_[^/]+$/);
  await expect(page.getByText('Version 1 confirmed').first()).toBeVisible();

  // the confirmed plan is frozen: its planner leads back to the case
  await page.goto(`${page.url()}/plan`);
  await expect(page).toHaveURL(/\/cases\/case_[^/]+$/);

  await page.getByRole('button', { name: 'Change the plan' }).click();
  await page.getByRole('button', { name: 'Begin version 2' }).click();
  await page.waitForURL(/\/plan$/);
  await holeOf(page, 'S1').click();
  await page.getByRole('textbox', { name: 'Length, mm', exact: true }).fill('20');
  await saved(page);
  await page.getByRole('button', { name: 'Confirm version 2' }).click();
  await page.getByRole('button', { name: 'Confirm this plan' }).click();
  await page.waitForURL(/\/cases\/case_[^/]+$/);
  const changes = page.getByRole('table', { name: 'Changes from version 1 to version 2' });
  await expect(changes.getByRole('row')).toHaveCount(2);
  await expect(changes.getByRole('row', { name: /Plate P1, hole S1/ })).toContainText(/18 mm.*20 mm/);
});

test('a booking that can not be taken keeps what was entered and says why', async ({ page }) => {
  const day = dayFromNow(46);
  await bookCase(page, { day });
  await page.goto('/cases/new');
  await page.getByLabel('Region').selectOption({ label: 'Ankle' });
  await page.getByRole('radio', { name: 'Right' }).check();
  await page.getByLabel('Theatre').selectOption({ label: 'Theatre 2' });
  await page.getByLabel('Date').fill(day);
  await page.getByLabel('Begins at').fill('08:35');
  await page.getByRole('button', { name: 'Book the case' }).click();
  await expect(page.getByRole('alert').getByText(/Theatre 2 has case LM-\d\d-/)).toBeVisible();
  await expect(page.getByLabel('Region')).toHaveValue('ankle');
  await expect(page.getByRole('radio', { name: 'Right' })).toBeChecked();
});

test('a plan with a stop is not confirmed, and says which', async ({ page }) => {
  await bookCase(page, { day: dayFromNow(41) });
  await choosePlate(page, 'CR-P35-N-04');
  await holeOf(page, 'S2').click();
  await page.getByRole('radio', { name: 'Neutral' }).check();
  await page.getByRole('radio', { name: /Carrowby cortical 3\.5/ }).check();
  await page.getByRole('textbox', { name: 'Length, mm', exact: true }).fill('17');
  await page.getByRole('button', { name: 'Confirm version 1' }).click();
  const dialog = page.getByRole('dialog', { name: 'This plan can’t be confirmed yet' });
  await expect(dialog).toContainText('plate P1, hole S2');
  await expect(dialog).toContainText('17 mm is not made');
  await dialog.getByRole('button', { name: 'Go back' }).click();

  // a note that is too long, or looks like a patient's data, stays beside its field and out of the plan
  await saved(page);
  const note = page.getByLabel('Note for whoever prepares the kit');
  await note.fill('x'.repeat(10_000));
  await expect(page.getByText('10000 characters: at most 500, so it is not saved.')).toBeVisible();
  await note.fill('NHS 943 476 5919');
  await expect(page.getByText(/looks like a national health number/)).toBeVisible();
  await page.reload();
  await expect(page.getByLabel('Note for whoever prepares the kit')).toHaveValue('');
});

test('a plan is written with the keyboard alone', async ({ page }) => {
  await bookCase(page, { day: dayFromNow(42) });
  await page.getByRole('button', { name: 'Choose a plate' }).focus();
  await page.keyboard.press('Enter');
  const search = page.getByLabel('Find a plate');
  await search.focus();
  await page.keyboard.type('CR-P35-N-05');
  await expect(page.getByText(/1 of \d+ plates/)).toBeVisible();
  const plate = page.getByRole('dialog').getByRole('button', { name: /CR-P35-N-05/ });
  for (
    let tabs = 0;
    tabs < 6 && !(await plate.evaluate((node) => node === document.activeElement));
    tabs += 1
  ) {
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeHidden();

  await holeOf(page, 'S1').focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('n');
  await expect(page.getByLabel('Find a family')).toBeFocused();
  await page.keyboard.type('carrowby cortical 3.5');
  await page.keyboard.press('Tab');
  const family = page.getByRole('radio', { name: /Carrowby cortical 3\.5/ });
  for (
    let tabs = 0;
    tabs < 4 && !(await family.evaluate((node) => node === document.activeElement));
    tabs += 1
  ) {
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Space');
  await holeOf(page, 'S1').focus();
  await page.keyboard.type('18');
  await expect(holeOf(page, 'S1')).toHaveAccessibleName(
    /neutral, Carrowby cortical 3\.5, 18 mm, both cortices/,
  );

  await page.keyboard.press('ArrowRight');
  await expect(holeOf(page, 'S2')).toBeFocused();
  await page.keyboard.press('r');
  await page.keyboard.press('o');
  await page.keyboard.press('b');
  await expect(holeOf(page, 'S2')).toHaveAccessibleName(/offset, Carrowby cortical 3\.5, 18 mm, one cortex/);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+End');
  await page.keyboard.press('e');
  for (const id of ['S3', 'S4', 'S5']) await expect(holeOf(page, id)).toHaveAccessibleName(/left empty/);
  await page.keyboard.press('Control+z');
  await expect(holeOf(page, 'S4')).toHaveAccessibleName(/not decided/);
  await page.keyboard.press('Control+Shift+z');
  await expect(holeOf(page, 'S4')).toHaveAccessibleName(/left empty/);
  // the table is the same plan
  await expect(page.getByLabel('Length for S2, mm')).toHaveValue('18');
  await saved(page);
});

test('two people on one draft: the later save is refused and both values are shown', async ({
  page,
  browser,
  baseURL,
  problems,
}) => {
  problems.expect(/409/);
  await bookCase(page, { day: dayFromNow(43) });
  await choosePlate(page, 'CR-P35-N-04');
  await saved(page);

  const other = await (await browser.newContext({ baseURL: baseURL ?? '' })).newPage();
  await actAs(other, OTHER_SURGEON, baseURL ?? '');
  await other.goto(page.url());
  await other.getByRole('radio', { name: 'Poor' }).check();
  await saved(other);

  // a click, not a check: the question that comes up takes the rest of the page out of reach
  await page.getByRole('radio', { name: 'Normal' }).click();
  const dialog = page.getByRole('dialog', { name: 'Somebody else changed this plan' });
  await expect(dialog.getByRole('row', { name: /Bone/ })).toContainText(/Poor.*Normal/);
  await dialog.getByRole('button', { name: 'Save mine over it' }).click();
  await expect(dialog).toBeHidden();
  await saved(page);
  await other.reload();
  await expect(other.getByRole('radio', { name: 'Normal' })).toBeChecked();
  await other.context().close();
});

test('a new case from a saved start takes less than a minute of the surgeon’s time', async ({ page }) => {
  await page.goto('/plans');
  const begun = Date.now();
  await page
    .getByRole('region', { name: /Forearm shaft, compression/ })
    .getByRole('link', { name: 'Book a case from it' })
    .click();
  await bookCase(page, { day: dayFromNow(44), start: 'chosen' });
  await expect(page.getByRole('option').first()).toBeVisible();
  await saved(page);
  expect(Date.now() - begun).toBeLessThan(60_000);

  // and kept again under another name, listed, renamed, deleted
  await page.getByRole('button', { name: 'Save as a start' }).click();
  const name = `Kept by a test ${begun}`;
  await page.getByRole('textbox', { name: 'Name' }).fill(name);
  await page.getByRole('button', { name: 'Save this start' }).click();
  await expect(page.getByRole('dialog')).toBeHidden();
  await page.goto('/plans');
  const card = page.getByRole('region', { name });
  await card.getByRole('button', { name: 'Rename' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill(`${name}, renamed`);
  await page.getByRole('button', { name: 'Give it this name' }).click();
  const renamed = page.getByRole('region', { name: `${name}, renamed` });
  await expect(renamed).toBeVisible();
  await renamed.getByRole('button', { name: 'Delete' }).click();
  await page.getByRole('button', { name: 'Delete this start' }).click();
  await expect(renamed).toBeHidden();
});

test('the fracture zone is drawn, typed and moved by keys', async ({ page }) => {
  await bookCase(page, { day: dayFromNow(45) });
  await choosePlate(page, 'CR-P35-N-08');
  await page.getByRole('button', { name: 'Mark the zone on the drawing' }).click();
  const board = page.getByRole('group', { name: /drawn to scale/ });
  const box = await board.boundingBox();
  if (!box) throw new Error('the drawing is not on the page');
  await page.mouse.move(box.x + box.width * 0.45, box.y + box.height * 0.5);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.55, box.y + box.height * 0.5, { steps: 5 });
  await page.mouse.up();
  const from = page.getByLabel('Fracture zone from');
  await expect(from).not.toHaveValue('');
  await from.fill('40');
  await page.getByLabel('to', { exact: true }).fill('52');
  const end = page.getByRole('slider', { name: 'Fracture zone ends' });
  await end.focus();
  await page.keyboard.press('ArrowRight');
  await expect(end).toHaveAttribute('aria-valuenow', '53');
  await expect(page.getByLabel('to', { exact: true })).toHaveValue('53');
});

test('the API refuses bad plans with every path, and unknown ids', async ({ request, page, baseURL }) => {
  await actAs(page, SURGEON, baseURL ?? '');
  const headers = { Cookie: `acting=${SURGEON}`, 'Content-Type': 'application/json' };
  const malformed = await request.put('/api/plans/plan_nobody', {
    headers,
    data: Buffer.from('{"revision": '),
  });
  expect(malformed.status()).toBe(400);
  expect(malformed.headers()['content-type']).toContain('application/problem+json');

  const bad = {
    caseId: 'case_lm-26-u9dx',
    construct: {
      region: 'moon',
      limb: 'up',
      bone: 'normal',
      plates: 'none',
      freeScrews: [],
      sharedLengthSdMm: -1,
      note: 'x'.repeat(10_000),
    },
  };
  const refused = await request.post('/api/plans', { headers, data: bad });
  expect(refused.status()).toBe(422);
  const paths = ((await refused.json()) as { errors: { pointer: string }[] }).errors
    .map(({ pointer }) => pointer)
    .sort();
  expect(paths).toEqual(['/limb', '/note', '/plates', '/region', '/sharedLengthSdMm']);

  expect((await request.get('/cases/case_nobody')).status()).toBe(404);
  expect((await request.get('/cases/case_nobody/plan')).status()).toBe(404);
  expect(
    (await request.post('/api/plans/plan_nobody/confirm', { headers, data: { revision: 1 } })).status(),
  ).toBe(404);
});

test('cases, booking, planner and starts are accessible in both themes and narrow', async ({ page }) => {
  test.setTimeout(180_000);
  for (const path of ['/cases', '/cases/new', '/plans', '/cases/case_lm-26-9rtb']) {
    await page.goto(path);
    await expectAccessible(page);
  }
  await page.goto('/cases/case_lm-26-p3ka/plan');
  await expectAccessible(page, { screens: ['desk', 'tablet', 'narrowest'] });
  await setScreen(page, 'desk');
  await holeOf(page, 'S3').click();
  await expectAccessible(page);
});
