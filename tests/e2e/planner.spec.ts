import { ALONE, actAs, expect, test } from './harness';
import { bookCase, choosePlate, dayFromNow, holeOf, OTHER_SURGEON, SURGEON, saved, stops } from './planning';

test.beforeEach(async ({ page }) => {
  await actAs(page, SURGEON);
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
  await page.keyboard.type('CR-P35-N-05', { delay: 70 });
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
  // as fast as a hand: letters in a burst, then Tab, are what a scanner sends
  await page.keyboard.type('carrowby cortical 3.5', { delay: 70 });
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
  await actAs(other, OTHER_SURGEON);
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

test(
  'a new case from a saved start takes less than a minute of the surgeon’s time',
  ALONE,
  async ({ page }) => {
    await page.goto('/plans');
    const begun = Date.now();
    await page.getByRole('link', { name: /Forearm shaft, compression/ }).click();
    await page.getByRole('link', { name: 'Book a case from it' }).click();
    await bookCase(page, { day: dayFromNow(44), start: 'chosen' });
    await expect(page.getByRole('option').first()).toBeVisible();
    await saved(page);
    expect(Date.now() - begun).toBeLessThan(60_000);

    // and kept again under another name, listed, renamed, retired
    await page.getByRole('button', { name: 'Save as a start' }).click();
    const name = `Kept by a test ${begun}`;
    await page.getByRole('textbox', { name: 'Name' }).fill(name);
    await page.getByRole('button', { name: 'Save this start' }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
    // changed, it is its next version
    await holeOf(page, 'S1').click();
    await page.getByRole('textbox', { name: 'Length, mm', exact: true }).fill('18');
    await saved(page);
    await page.getByRole('button', { name: 'Save as a start' }).click();
    await page.getByLabel('Keep it as').selectOption({ label: `The next version of “${name}” (now 1)` });
    await page.getByRole('button', { name: 'Save as version 2' }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
    await page.goto('/plans');
    await page.getByRole('link', { name }).click();
    await expect(page.getByRole('table', { name: 'Changes from version 1 to version 2' })).toContainText(
      'hole S1',
    );
    await page.getByRole('button', { name: 'Rename' }).click();
    await page.getByRole('textbox', { name: 'Name' }).fill(`${name}, renamed`);
    await page.getByRole('button', { name: 'Give it this name' }).click();
    await expect(page.getByRole('heading', { level: 1, name: `${name}, renamed` })).toBeVisible();
    await page.getByRole('button', { name: 'Retire' }).click();
    await page.getByRole('button', { name: 'Retire this start' }).click();
    await expect(page.getByText('Retired').first()).toBeVisible();
    await page.goto('/plans');
    await expect(page.getByRole('link', { name: `${name}, renamed` })).toBeHidden();
  },
);
