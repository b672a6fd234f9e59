import { agreeToChange, tryChange } from './changes';
import { actAs, expect, expectAccessible, test } from './harness';

const LEAD = 'person_maurice-oduya';
const SECOND = 'person_hettie-crane';

test('a version is drafted, refused while it is wrong, and put in force by a second person', async ({
  page,
  problems,
}) => {
  problems.expect(/422/);
  await actAs(page, LEAD);
  await page.goto('/configurations?q=bending');
  await page.getByRole('rowheader').getByRole('link').first().click();
  await page.getByRole('button', { name: /^Draft version/ }).click();
  const address = page.url().split('?')[0] ?? '';
  await page.getByRole('button', { name: /^Begin version/ }).click();
  await expect(page.getByText('Version 2 in draft')).toBeVisible();

  // all problems at once, beside their fields
  await page.locator('[name="lines.0.expected"]').fill('two');
  await page.locator('[name="lines.1.minimum"]').fill('99');
  await page.getByRole('button', { name: 'Save the draft' }).click();
  await expect(page.getByRole('alert').first()).toContainText('put right');
  await expect(page.locator('[name="lines.0.expected"]')).toHaveAttribute('aria-invalid', 'true');

  await page.locator('[name="lines.0.expected"]').fill('3');
  await page.locator('[name="lines.1.minimum"]').fill('0');
  await page.locator('[name="note"]').fill('Two more presses.');
  await page.getByRole('button', { name: 'Save the draft' }).click();
  await expect(page.getByText('As saved')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Try it and put it in force' }).click();
  await expect(page.getByRole('button', { name: 'Approve…' })).toBeDisabled();

  await actAs(page, SECOND);
  await page.reload();
  await tryChange(page);
  await agreeToChange(page, { trigger: 'Approve…', when: /^At once/, confirm: 'Put it in force' });
  await expect(page.getByText('Version 2, in force')).toBeVisible();
  await page.goto(`${address}/compare?from=1&to=2`);
  await expect(page.getByRole('cell', { name: /^1 expected/ })).toBeVisible();
  await expect(page.getByRole('cell', { name: /^3 expected/ })).toBeVisible();
  await expectAccessible(page);
});

test('a new configuration needs a code of its own', async ({ page, problems }) => {
  problems.expect(/422/);
  await actAs(page, LEAD);
  await page.goto('/configurations/new');
  await page.getByLabel('Code').fill('sfs');
  await page.getByLabel('Name').fill('Another');
  await page.getByRole('button', { name: 'Begin the draft' }).click();
  await expect(page.getByText(/is the code of/).first()).toBeVisible();
  await page.getByLabel('Code').fill('nw9');
  await page.getByRole('button', { name: 'Begin the draft' }).click();
  await expect(page.getByText('Version 1 in draft')).toBeVisible();
});

test('a text that looks like patient data is warned of as it is typed, in any text field', async ({
  page,
}) => {
  await actAs(page, LEAD);
  await page.goto('/configurations/new');
  const name = page.getByLabel('Name');
  await name.fill('Small fragment, for Mrs Ashcombe');
  await expect(page.getByText(/“Mrs Ashcombe” looks like/)).toBeVisible();
  await name.fill('Small fragment, spare');
  await expect(page.getByText(/looks like/)).toHaveCount(0);
});
