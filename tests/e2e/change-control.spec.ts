import { agreeToChange, tryChange } from './changes';
import { actAs, expect, expectAccessible, test } from './harness';

const MANAGER = 'person_gwen-sallis';
const LEAD = 'person_maurice-oduya';
const SECOND = 'person_hettie-crane';
const TECHNICIAN = 'person_wren-adeyemi';

test('a withdrawal is tried against every plan, and the second person sees what the first one saw', async ({
  page,
}) => {
  await actAs(page, MANAGER);
  await page.goto('/fit/rules/tap-thread-diameter-equal');
  await expect(page.getByText('Nobody has tried it yet')).toBeVisible();
  await tryChange(page);
  await expect(page.getByText(/pairs in the catalogue, [\d,]+ would get another answer/)).toBeVisible();
  await expect(page.getByText(/booked cases with a plan.*would stand otherwise/)).toBeVisible();
  await page.getByRole('button', { name: 'Withdraw…' }).click();
  await page.getByLabel('Why').fill('our sleeves are measured otherwise');
  await page.getByRole('button', { name: 'Ask for withdrawal' }).click();
  await expect(page.getByRole('button', { name: 'Agree to withdraw…' })).toBeDisabled();

  await actAs(page, LEAD);
  await page.reload();
  await expect(page.getByText('nobody approves what they have not seen')).toBeVisible();
  await tryChange(page);
  await expect(page.getByText(/You see exactly what Gwen Sallis saw/)).toBeVisible();
  await expectAccessible(page);
});

test('a version waits for its day, and a configuration goes out of use by two people', async ({
  page,
  problems,
}) => {
  problems.expect(/422/);
  await actAs(page, MANAGER);
  await page.goto('/configurations?q=mini');
  await page.getByRole('rowheader').getByRole('link').first().click();
  await page.getByRole('button', { name: /^Draft version/ }).click();
  const address = page.url().split('?')[0] ?? '';
  await page.getByRole('button', { name: /^Begin version/ }).click();
  await page.locator('[name="note"]').fill('The same again, to be approved for a later day.');
  await page.getByRole('button', { name: 'Save the draft' }).click();
  await expect(page.getByText('As saved')).toBeVisible({ timeout: 20_000 });

  await actAs(page, LEAD);
  await page.goto(`${address}/approve`);
  await tryChange(page);
  await expect(page.getByText('Mass of a whole set')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Approve…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('radio', { name: /day to come/ }).check();
  await dialog.getByRole('textbox', { name: 'Day' }).fill('2999-01-01');
  await dialog.getByRole('button', { name: 'Go on' }).click();
  await dialog.getByLabel(/password/i).fill('not what it is');
  await dialog.getByRole('button', { name: 'Put it in force' }).click();
  await expect(dialog.getByRole('textbox', { name: /password/i })).toHaveAttribute('aria-invalid', 'true');
  await page.keyboard.press('Escape');

  await page.getByRole('button', { name: 'Approve…' }).click();
  await dialog.getByRole('button', { name: 'Go on' }).click();
  await dialog.getByLabel(/password/i).fill('larkmoor infirmary');
  await dialog.getByRole('button', { name: 'Put it in force' }).click();
  await expect(page.getByText(/approved, in force from 2999-01-01/).first()).toBeVisible();

  await page.getByRole('button', { name: 'Take it out of use…' }).click();
  await page.getByLabel('Why').fill('replaced by a larger one');
  await page.getByRole('button', { name: 'Ask a second person' }).click();
  await expect(page.getByRole('button', { name: /^Agree to take it out/ })).toBeDisabled();
  await actAs(page, SECOND);
  await page.reload();
  await agreeToChange(page, { trigger: /^Agree to take it out/, when: null, confirm: 'Take it out of use' });
  await expect(page.getByText('Out of use', { exact: true })).toBeVisible();
  await expectAccessible(page);
});

test('a setting shows its default, refuses all that is wrong at once, and keeps who changed it and why', async ({
  page,
  problems,
}) => {
  problems.expect(/422/);
  await actAs(page, MANAGER);
  await page.goto('/settings/sets');
  await page.getByLabel('Mass limits, in kg').fill('7; many; 400');
  await page.getByLabel('Warn from').fill('12.5');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText(/many.*is not a number/).first()).toBeVisible();
  await expect(page.getByText('Write whole %.').first()).toBeVisible();
  await expect(page.getByText(/Say why in a few words/).first()).toBeVisible();
  await page.getByLabel('Mass limits, in kg').fill('7; 10');
  await page.getByLabel('Warn from').fill('85');
  await page.getByLabel('Why').fill('our trolleys carry no more');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Warn from: 90 % → 85 %')).toBeVisible();
  await expectAccessible(page);

  await actAs(page, TECHNICIAN);
  await page.goto('/settings');
  await expect(page.getByText('default 7 kg, 10 kg, 11.34 kg')).toBeVisible();
});
