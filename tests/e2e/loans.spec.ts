import type { Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { actAs, expect, test } from './harness';

const KEEPER = 'person_dilys-harrow';
const TECHNICIAN = 'person_wren-adeyemi';

const LIST = [
  'tray,code,quantity,name,implant',
  '1,SF-C35-16,3,,',
  '1,CR-B28-200,1,,',
  '1,,1,bone hook of the lender,no',
].join('\n');

/** Counts every line as in order with these figures, by the names of the lines. */
async function count(page: Page, figures: Record<string, string>): Promise<void> {
  for (const [name, sound] of Object.entries(figures))
    await page.getByRole('listitem').filter({ hasText: name }).getByLabel('In order').fill(sound);
  await page.getByRole('button', { name: 'This is my count' }).click();
}

const next = (page: Page, title: string | RegExp) =>
  expect(page.getByRole('heading', { level: 2, name: title })).toBeVisible();

async function prove(page: Page, confirm: string): Promise<void> {
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Your password').fill(DEMO_PASSWORD);
  await dialog.getByRole('button', { name: confirm }).click();
}

test('a loan is asked for, arrives, is unpacked by two people, is not needed, and goes back signed for', async ({
  page,
  problems,
}) => {
  test.setTimeout(60_000);
  // a list with a fault, and no count: refused on purpose
  problems.expect(/422/);
  await actAs(page, KEEPER);
  await page.goto('/loans/new');
  await page.getByLabel('Lender').selectOption({ label: 'Corrow Hill Loan Sets' });
  await page.getByRole('radio', { name: 'a period' }).check();
  await page.getByLabel('First day').fill('2035-03-05');
  await page.getByLabel('Last day').fill('2035-03-09');
  await page.getByLabel('What you ask for').fill('Small screws and their bits, one tray');
  await page.getByRole('button', { name: 'Ask for it' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(/Loan LN-\d{4}/);
  const address = page.url();

  await next(page, 'Enter what the lender says');
  await page.getByRole('radio', { name: 'It comes' }).check();
  await page.getByRole('button', { name: 'Enter the answer' }).click();

  await next(page, 'Bring in the lender’s content list');
  const file = (text: string) => ({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  const choose = page.getByLabel(/Choose the file|Chosen:/);
  await choose.setInputFiles(file(LIST.replace('SF-C35-16,3', 'SF-C35-16,three')));
  await expect(page.getByText('Line 2, quantity: “three” is no whole number from 1 to 999.')).toBeVisible();
  await choose.setInputFiles(file(LIST));
  await expect(page.getByText('3 lines, 5 pieces, 1 tray', { exact: false })).toBeVisible();
  await expect(page.getByText('Tray 1: 1 × bone hook of the lender')).toBeVisible();
  await page.getByRole('button', { name: 'Take this list' }).click();

  await next(page, 'Wait for it, and enter its arrival');
  await page.getByLabel('Trays that came').fill('1');
  await page.getByLabel('Brought by').fill('the lender’s driver');
  await page.getByRole('button', { name: 'It has arrived' }).click();

  await next(page, 'Look for the declaration and the instructions');
  for (const paper of [/declaration/, /instructions/])
    await page.getByRole('group', { name: paper }).getByRole('radio', { name: 'here', exact: true }).check();
  await page.getByRole('button', { name: 'Enter this' }).click();

  await next(page, 'Weigh each tray');
  await page.getByLabel('Tray 1').fill('12.4');
  await expect(page.getByText('above 11.34 kg', { exact: false })).toBeVisible();
  await page.getByLabel('Tray 1').fill('4.2');
  await page.getByRole('button', { name: 'Enter the masses' }).click();

  await next(page, 'Fix the ownership tags');
  await page.getByRole('button', { name: 'The tags are on' }).click();

  await next(page, 'Count it against the list');
  await page.getByRole('button', { name: 'This is my count' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'not counted' })).toBeVisible();
  const screw =
    (await page.getByRole('listitem').filter({ hasText: 'SF-C35-16' }).getByRole('strong').textContent()) ??
    '';
  await count(page, { [screw]: '3', 'CR-B28-200': '1', 'bone hook': '1' });
  await next(page, /A second person counts it/);
  await expect(page.getByText('Another person checks it here')).toBeVisible();

  await actAs(page, TECHNICIAN);
  await page.goto(address);
  await count(page, { [screw]: '3', 'CR-B28-200': '1', 'bone hook': '1' });
  await next(page, 'Hand it on for decontamination');
  await actAs(page, KEEPER);
  await page.goto(address);
  await page.getByRole('button', { name: 'It is unpacked' }).click();

  await next(page, 'It takes its turn like any other set');
  await page.getByRole('button', { name: 'Begin the return' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Why').fill('It is not needed after all.');
  await dialog.getByRole('button', { name: 'Begin the return' }).click();

  await next(page, 'Count it before it goes');
  await count(page, { [screw]: '2', 'CR-B28-200': '1', 'bone hook': '1' });
  await next(page, /A second person counts it before it goes/);
  await actAs(page, TECHNICIAN);
  await page.goto(address);
  await count(page, { [screw]: '2', 'CR-B28-200': '1', 'bone hook': '1' });

  await next(page, 'Weigh each tray before it goes');
  await page.getByLabel('Tray 1').fill('4.1');
  await page.getByRole('button', { name: 'Enter the masses' }).click();
  await next(page, 'Put to the lender what is not as it should be');
  await actAs(page, KEEPER);
  await page.goto(address);
  await page.getByRole('button', { name: 'Put it to the lender' }).click();
  await dialog.getByLabel('What you tell them').fill('One screw is not in the tray any more.');
  await dialog.getByRole('button', { name: 'Open the claim' }).click();
  await expect(page.getByText('in the count as it came', { exact: false })).toBeVisible();

  await actAs(page, TECHNICIAN);
  await page.goto(address);
  await page.getByRole('button', { name: 'Declare it' }).click();
  await prove(page, 'Declare');
  await next(page, 'Hand it over, to somebody by name');
  await actAs(page, KEEPER);
  await page.goto(address);
  await page.getByLabel('Collected by').fill('Percival Undrell');
  await page.getByRole('button', { name: 'Hand it over' }).click();
  await prove(page, 'Hand it over');
  await expect(page.getByText('Gone back', { exact: true }).first()).toBeVisible();
  await next(page, 'Enter what came of the claims');
  const note = await page.request.get(`${address}/return-note`);
  expect(note.headers()['content-type']).toBe('application/pdf');
});

test('the board says what is late, here and to come, each with its next step', async ({ page }) => {
  await actAs(page, KEEPER);
  await page.goto('/loans');
  const part = (name: string) => page.getByRole('list', { name, exact: true });
  await expect(part('Late')).toContainText('LN-4476');
  await expect(part('Here')).toContainText('LN-4475');
  await expect(part('Here')).toContainText('held: CLO-L2');
  await expect(part('To come')).toContainText('LN-4477');
  // the keeper’s own step comes before what is waited for
  const here = await part('Here').getByRole('listitem').allTextContents();
  expect(here.findIndex((text) => text.includes('LN-4475'))).toBeLessThan(
    here.findIndex((text) => text.includes('LN-4471')),
  );
  await part('Here').getByRole('link', { name: 'LN-4472' }).click();
  await expect(page.getByRole('heading', { level: 2, name: /Get the missing papers/ })).toBeVisible();
});
