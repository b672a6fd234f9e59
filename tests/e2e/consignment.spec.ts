import { readFile } from 'node:fs/promises';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { actAs, expect, expectAccessible, test } from './harness';

const KEEPER = 'person_dilys-harrow';
const MANAGER = 'person_gwen-sallis';
const TECHNICIAN = 'person_wren-adeyemi';

test('what was used of an owner’s stock is told once: made, chosen line by line, approved, sent, and received in replacement', async ({
  page,
  problems,
}) => {
  test.setTimeout(180_000);
  // an owner without a reason, and a sending without a word: refused on purpose
  problems.expect(/422/);
  await actAs(page, KEEPER);
  await page.goto('/consignment');
  const owners = page.getByRole('table', { name: 'Owners' });
  await expect(owners.getByRole('row').filter({ hasText: 'Sallowfen Surgical' })).toContainText(/pieces? on/);

  // whose a lot is, is stated by a person with a reason
  const notStated = page.getByRole('table', { name: 'Lots whose owner is not stated' });
  await notStated.getByRole('button', { name: /State the owner of SF-PH35-03/ }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Owner').selectOption({ label: 'Sallowfen Surgical' });
  await dialog.getByRole('button', { name: 'State the owner' }).click();
  await expect(dialog.getByText('at least 8 characters').first()).toBeVisible();
  await expectAccessible(page);
  await dialog.getByLabel('How you know').fill('It is on their list of what lies here.');
  await dialog.getByRole('button', { name: 'State the owner' }).click();
  await expect(page.getByText('Owner not stated')).toHaveCount(0);

  await owners.getByRole('link', { name: 'Sallowfen Surgical' }).click();
  const waiting = page.getByRole('table', { name: 'What waits for a usage order' });
  await expect(waiting).toBeVisible();
  const lines = (await waiting.getByRole('row').count()) - 1;
  expect(lines).toBeGreaterThan(0);
  await expect(page.getByRole('table', { name: 'Lots, what came and where it went' })).toContainText(
    'PH35-0417',
  );
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Make the usage order' }).click();
  await expect(page).toHaveURL(/\/consignment\/orders\/usageOrder_/);
  const address = page.url();
  await expect(page.getByText('Made, not approved').first()).toBeVisible();
  // who makes it does not approve it
  await expect(page.getByRole('button', { name: 'Approve' })).toHaveCount(0);

  // nothing is chosen that nobody chose
  const table = page.getByRole('table', { name: 'Lines of the usage order' });
  await expect(table.getByRole('radio', { checked: true })).toHaveCount(0);
  const rows = table.getByRole('row');
  for (let at = 1; at <= lines; at += 1)
    await rows
      .nth(at)
      .getByRole('radio', { name: at === 1 ? 'do not replace' : 'replace', exact: true })
      .check();
  await expectAccessible(page);
  await page.getByRole('button', { name: /^Keep what is said of/ }).click();
  await expect(page.getByText(`${lines - 1} so far`)).toHaveCount(0);

  await actAs(page, MANAGER);
  await page.goto(address);
  await page.getByRole('button', { name: 'Approve' }).click();
  await expect(page.getByText('Approved, not sent').first()).toBeVisible();
  await page.goto('/morning');
  await expect(page.getByText('Usage orders due')).toBeVisible();

  await actAs(page, KEEPER);
  await page.goto(address);
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'CSV' }).click(),
  ]);
  expect(file.suggestedFilename()).toMatch(/^usage-UO-\d{4}\.csv$/);
  const csv = await readFile(await file.path(), 'utf8');
  expect(csv.split('\r\n')).toHaveLength(lines + 2);
  expect(csv).toContain('do not replace');
  const paper = await page.request.get(`${address}/paper`);
  expect(paper.headers()['content-type']).toBe('application/pdf');
  await page.getByRole('button', { name: 'Mark as sent' }).click();
  await dialog.getByRole('button', { name: 'Mark as sent' }).click();
  await expect(dialog.getByText('say how').first()).toBeVisible();
  await dialog.getByLabel('How you sent it').fill('by e-mail to their order desk');
  await dialog.getByRole('button', { name: 'Mark as sent' }).click();
  await expect(dialog).toHaveCount(0);
  await expect(page.getByText('by e-mail to their order desk', { exact: false })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Withdraw' })).toHaveCount(0);

  // a technician looks, and does nothing
  await actAs(page, TECHNICIAN);
  await page.goto(address);
  await expect(page.getByRole('heading', { level: 1 })).toContainText(/Usage order UO-\d{4}/);
  await expect(page.getByRole('button', { name: 'Nothing more is expected' })).toHaveCount(0);
});

test('a delivery on consignment names its owner, and the terms of an item say that it is not bought', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await actAs(page, KEEPER);
  await page.goto('/stock/receive');
  await page.getByRole('radio', { name: 'another, on consignment' }).check();
  await page.getByLabel('Owner').selectOption({ label: 'Corrow Hill Loan Sets' });
  await expectAccessible(page);

  await page.goto('/restock/terms');
  await page.getByRole('button', { name: 'Change the terms of Sallowfen Surgical' }).first().click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Kept').selectOption({ label: 'on consignment' });
  await dialog.getByRole('button', { name: 'State these terms' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'Sallowfen Surgical' }).first()).toContainText(
    'on consignment',
  );
});

test('an owner’s list is set beside our record, refused with a fault in it, explained by a person and closed by two', async ({
  page,
  problems,
}) => {
  test.setTimeout(180_000);
  // a list with a fault in it: refused whole on purpose
  problems.expect(/422/);
  await actAs(page, KEEPER);
  await page.goto('/consignment/lender_sallowfen');
  await page.getByRole('link', { name: 'Reconcile with their list' }).click();
  await expect(page.locator('[data-listening]').first()).toBeVisible();
  await page.getByRole('radio', { name: 'their list' }).check();
  const list = page.getByRole('textbox', { name: 'The list' });
  await list.fill('code;lot;quantity\nSF-L35-40;L35-8110;1.000\nNO-SUCH;X1;1\n');
  await page.getByRole('button', { name: 'Set it beside our record' }).click();
  await expect(page.getByText('can be a thousand or a decimal', { exact: false }).first()).toBeVisible();
  await expect(
    page.getByText('“NO-SUCH” is nothing in the catalogue', { exact: false }).first(),
  ).toBeVisible();
  await expectAccessible(page);
  await list.fill('code;lot;quantity\nSF-L35-40;L35-8110;3\n');
  await page.getByRole('button', { name: 'Set it beside our record' }).click();
  await expect(page).toHaveURL(/\/consignment\/reconciliations\/reconciliation_/);
  const table = page.getByRole('table', { name: 'Lots side by side' });
  await expect(table.getByRole('row').filter({ hasText: 'L35-8110' })).toContainText('+1');
  await expectAccessible(page);
  await expect(page.getByText('nobody has written why it is there', { exact: false })).toBeVisible();
  const dialog = page.getByRole('dialog');
  for (;;) {
    const silent = table.getByRole('row').filter({ hasText: 'no reason written yet' });
    const left = await silent.count();
    if (left === 0) break;
    await silent
      .first()
      .getByRole('button', { name: /^Write why/ })
      .click();
    await dialog.getByLabel('Why it is there').fill('Their list is of last month.');
    await dialog.getByRole('button', { name: 'Keep the reason' }).click();
    await expect(silent).toHaveCount(left - 1);
  }
  await page.getByRole('button', { name: /with a second person$/ }).click();
  await expectAccessible(page);
  await dialog.getByRole('combobox', { name: 'Second person' }).fill('Gwen Sallis');
  await page.getByRole('option', { name: /Gwen Sallis/ }).click();
  await dialog.getByLabel(/^Their /).fill(DEMO_PASSWORD);
  await dialog.getByRole('button', { name: 'I stand for it too' }).click();
  const mine = page.getByRole('dialog', { name: /^Close RL-\d+$/ });
  await mine.getByLabel(/^Your /).fill(DEMO_PASSWORD);
  await mine.getByRole('button', { name: 'Close it' }).click();
  await expect(page.getByText('Closed by two, not all explained')).toBeVisible();
});
