import { agreeToChange, tryChange } from './changes';
import { actAs, expect, expectAccessible, test } from './harness';

const MANAGER = 'person_gwen-sallis';
const LEAD = 'person_maurice-oduya';

test('all rules are listed by relation, each with what it requires and its source', async ({ page }) => {
  await page.goto('/fit');
  const passes = page.getByRole('region', { name: 'Passes' });
  await expect(passes.getByRole('link', { name: 'Bore not too loose' })).toBeVisible();
  await expect(passes).toContainText(
    'the sleeve end’s bore less the bit or wire’s diameter is at most the sleeve tolerance',
  );
  await expect(passes).toContainText('Common practice, no source');
});

test('a pair says whether it fits, and why, in both directions (worked example B1)', async ({ page }) => {
  // a double-ended sleeve 2.5/3.5 and a bit of 2.8: too small at one end, loose by 0.7 > 0.2 at the other
  for (const address of ['/fit/pair?a=CR-S-E35&b=CR-B28-165', '/fit/pair?a=CR-B28-165&b=CR-S-E35']) {
    await page.goto(address);
    const first = page.getByRole('region', { name: 'Passes, sleeve end 1' });
    await expect(first).toContainText('The 2.5 mm bore is too small for 2.8 mm.');
    const second = page.getByRole('region', { name: 'Passes, sleeve end 2' });
    await expect(second).toContainText('The 3.5 mm bore is loose for 2.8 mm');
    await expect(second.getByText('Does not fit').first()).toBeVisible();
  }
  await expectAccessible(page);
});

test('two things are chosen by typing, and the address keeps them', async ({ page }) => {
  await page.goto('/fit/pair');
  const one = page.getByRole('combobox', { name: 'One thing' });
  await one.fill('CR-S-E35');
  await page.getByRole('option', { name: /CR-S-E35/ }).click();
  const other = page.getByRole('combobox', { name: 'The other' });
  await other.fill('CR-B25-110');
  await page.getByRole('option', { name: /CR-B25-110/ }).click();
  await expect(
    page.getByRole('region', { name: 'Passes, sleeve end 1' }).getByText('Fits').first(),
  ).toBeVisible();
  await expect(page).toHaveURL(/a=CR-S-E35.*b=CR-B25-110|b=CR-B25-110.*a=CR-S-E35/);
});

test('an unknown code is named, with the way out', async ({ page }) => {
  await page.goto('/fit/pair?a=NO-SUCH&b=CR-B25-110');
  await expect(page.getByText('The catalogue has no “NO-SUCH”')).toBeVisible();
});

test('the fit table is walked by arrow keys, and each cell says why', async ({ page }) => {
  await page.goto('/fit/table?relation=pilots');
  const reasons = page.getByRole('region', { name: 'Reasons', exact: true });
  const table = page.getByRole('table', { name: 'Does the bit drill the screw’s thread hole?' });
  await table.getByRole('button', { pressed: true }).focus();
  const before = await reasons.textContent();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowDown');
  await expect(table.getByRole('button', { pressed: true })).toBeFocused();
  expect(await reasons.textContent()).not.toBe(before);
  await page.keyboard.press('Control+End');
  await expect(table.getByRole('row').last().getByRole('button').last()).toBeFocused();
});

test('the catalogue check names what nothing fits and what nobody stated', async ({ page }) => {
  await page.goto('/fit/check');
  const missing = page.getByRole('region', { name: 'Not stated, and rules wait for it' });
  await expect(missing).toContainText('The sleeve end’s declared seats');
  await missing
    .getByRole('link', { name: /PT-S-X25/ })
    .first()
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Drill sleeve 2.5 with long handle');
});

test('a rule is drafted by one person, tried, approved by another, and withdrawn by two', async ({
  page,
}) => {
  await actAs(page, MANAGER);
  await page.goto('/fit/rules/new');
  await page.getByRole('button', { name: 'Draft the rule' }).click();
  await expect(
    page
      .getByRole('alert')
      .or(page.getByRole('group', { name: /problem/i }))
      .first(),
  ).toBeVisible();

  await page.getByLabel('Code').fill('bit-at-least-one-mm');
  await page.getByLabel('Relation').selectOption('pilots');
  await page.getByLabel('What it says then').fill('We keep no bits as thin as {bit.diameterUm}.');
  const requires = page.getByRole('group', { name: 'Requires', exact: true });
  await requires.getByLabel('What has to hold').selectOption('below');
  await requires.getByLabel('First').selectOption('value');
  await requires.getByLabel('Second').selectOption('fact:bit.diameterUm');
  await requires.getByLabel('Value').fill('1.2');
  await page.getByRole('button', { name: 'Read it back and try it' }).click();
  const back = page.getByRole('region', { name: 'Read back' });
  await expect(back).toContainText('1.2 mm is below the bit’s diameter');
  await expect(back).toContainText('would get another answer');
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Draft the rule' }).click();
  await expect(page).toHaveURL(/\/fit\/rules\/bit-at-least-one-mm$/);
  await expect(page.getByText('Draft, waits for a second person').first()).toBeVisible();
  await expect(page.getByRole('button', { name: 'Approve…' })).toBeDisabled();
  await expect(page.getByText('a second person has to agree')).toBeVisible();

  await actAs(page, LEAD);
  await page.reload();
  await expect(page.getByText('nobody approves what they have not seen')).toBeVisible();
  await tryChange(page);
  await agreeToChange(page, { trigger: 'Approve…', when: /^At once/, confirm: 'Put it in force' });
  await expect(page.getByText('In force', { exact: true }).first()).toBeVisible();
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Withdraw…' }).click();
  await page.getByLabel('Why').fill('tried in a browser test');
  await page.getByRole('button', { name: 'Ask for withdrawal' }).click();
  await expect(page.getByText('In force, withdrawal asked for').first()).toBeVisible();
  await actAs(page, MANAGER);
  await page.reload();
  await tryChange(page);
  await agreeToChange(page, { trigger: 'Agree to withdraw…', when: /^At once/, confirm: 'Withdraw it' });
  await expect(page.getByText('Withdrawn', { exact: true }).first()).toBeVisible();
});

test('conditions can be pasted as JSON, and what is wrong is said', async ({ page }) => {
  await actAs(page, MANAGER);
  await page.goto('/fit/rules/new');
  await page.getByText('The conditions as JSON, to copy or paste').click();
  const json = page.getByLabel('Conditions', { exact: true });
  await json.fill('{"requires": ');
  await page.getByRole('button', { name: 'Take over what is pasted' }).click();
  await expect(page.getByText(/This is not JSON/)).toBeVisible();
  await json.fill('{"requires": {"eqaul": []}}');
  await page.getByRole('button', { name: 'Take over what is pasted' }).click();
  await expect(page.getByText(/“eqaul” is no kind of condition/)).toBeVisible();
  await json.fill('{"requires": {"oneOf": [{"fact": "hole.holeClass"}, ["round"]]}}');
  await page.getByRole('button', { name: 'Take over what is pasted' }).click();
  const requires = page.getByRole('group', { name: 'Requires', exact: true });
  await expect(requires.getByLabel('What has to hold')).toHaveValue('oneOf');
  await expect(requires.getByLabel('round hole', { exact: true })).toBeChecked();
});
