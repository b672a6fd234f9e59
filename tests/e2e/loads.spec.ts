import type { Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { cycleFile } from '../fixtures/cycleFile';
import { actAs, expect, expectAccessible, test } from './harness';
import { scan } from './scanning-keys';

const csv = (text: string, name = 'cycle.csv') => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

async function importing(page: Page, text: string): Promise<void> {
  await page.getByLabel(/Choose the file|Chosen:/).setInputFiles(csv(text));
}

async function indicator(page: Page, which: string, result: string): Promise<void> {
  await page.getByRole('button', { name: 'Add an indicator' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('radio', { name: which, exact: true }).check();
  if (which !== 'Printed record of the cycle') {
    await dialog.getByLabel('Lot').fill('CI-9');
    await dialog.getByLabel('Use-by').fill('2031-01-31');
  }
  await dialog.getByRole('radio', { name: result, exact: true }).check();
  await dialog.getByRole('button', { name: 'Record it' }).click();
  await expect(dialog).toHaveCount(0);
}

async function prove(page: Page, confirm: string): Promise<void> {
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel(/Your /).fill(DEMO_PASSWORD);
  await dialog.getByRole('button', { name: confirm }).click();
}

/** The demo's own load in a state: the newest stands first, and those made by other tests before it. */
async function openLoad(page: Page, state: string): Promise<void> {
  await page.goto('/loads');
  const load = page.getByRole('listitem').filter({ hasText: state }).last();
  await load.getByRole('link').first().click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Load L');
}

test('a load is made up by scanner, run, read, unloaded and accepted; what was wet is held', async ({
  page,
  problems,
}) => {
  // a file with faults is refused on purpose
  problems.expect(/422/);
  await page.goto('/loads');
  const steriliser = page.getByRole('region', { name: 'Steriliser 2' });
  await steriliser.getByRole('button', { name: 'Make up a load' }).click();
  await page.getByRole('button', { name: '134 °C wrapped' }).click();
  await expect(page.getByRole('heading', { level: 2, name: 'Closed and waiting' })).toBeVisible();
  const waiting = page.getByRole('region', { name: 'Closed and waiting' }).getByRole('listitem').first();
  const code = (await waiting.getByRole('strong').textContent()) ?? '';
  const number = /P\d{7,}-\d/.exec((await waiting.textContent()) ?? '')?.[0] ?? '';
  const inside = page.getByRole('region', { name: 'In the load' });
  await scan(page, number);
  await expect(inside.getByRole('button', { name: `Take out ${code}` })).toBeVisible();
  // twice is once
  await scan(page, number);
  await expect(inside.getByRole('listitem')).toHaveCount(1);
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Start' }).click();
  await page.getByLabel('Cycle number on the steriliser').fill('4711');
  await page.getByRole('button', { name: 'Start the load' }).click();
  await expect(page.getByText('In the steriliser', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'End', exact: true }).click();
  await page.getByRole('button', { name: 'It has ended' }).click();
  await expect(page.getByText('Awaiting acceptance', { exact: true })).toBeVisible();

  await page.getByRole('button', { name: 'Import the cycle' }).click();
  await importing(page, `${cycleFile()}\n9000;hot`);
  await expect(page.getByRole('dialog').getByRole('alert')).toContainText('“hot” is not a number');
  await importing(page, cycleFile());
  await expect(page.getByRole('dialog').getByRole('status')).toContainText('programme kept');
  await page.getByRole('dialog').getByRole('button', { name: 'Import', exact: true }).click();
  await expect(page.getByRole('img', { name: /Temperature over/ }).first()).toBeVisible();

  await indicator(page, 'Chemical indicator', 'Passed');
  await indicator(page, 'Printed record of the cycle', 'Passed');
  await indicator(page, 'Biological indicator', 'Passed');
  // found by its label, and looked at: a wet pack is held at once, and the load has then nothing to accept
  await scan(page, number);
  await expect(page.locator('[data-chosen="true"]')).toContainText(code);
  await inside.getByRole('radio', { name: 'Wet', exact: true }).click();
  await expect(page.getByText(/No pack is sound/)).toBeVisible();
  await page.goto(`/sets`);
  await page.getByRole('link', { name: code, exact: true }).click();
  await expect(page.getByText(/wet, torn or unsealed/i).first()).toBeVisible();
});

test('a lead accepts with proof; a technician is told who may; rejecting holds everything since the last accepted', async ({
  page,
}) => {
  await openLoad(page, 'Awaiting acceptance');
  await expect(page.getByText('A decontamination lead accepts loads')).toBeVisible();
  const address = page.url();
  await actAs(page, 'person_maurice-oduya');
  await page.goto(address);
  await expect(page.getByText('Not looked at since unloading', { exact: false })).toBeVisible();
  const inside = page.getByRole('region', { name: 'In the load' });
  for (const row of await inside.getByRole('listitem').all()) {
    const sound = row.getByRole('radio', { name: 'Sound', exact: true });
    // it stands only once the server has it
    await sound.click();
    await expect(sound).toBeChecked();
  }
  await expect(page.getByText(/packs were looked at and are sound/)).toBeVisible();
  // implants wait: only the exception is open until the biological result is known
  await expect(page.getByRole('heading', { name: 'Accept, with an exception for implants' })).toBeVisible();
  await expectAccessible(page);
  await page
    .getByRole('listitem')
    .filter({ hasText: 'Biological indicator' })
    .getByRole('button', { name: 'Passed' })
    .click();
  await page.getByRole('button', { name: 'It passed' }).click();
  await expect(page.getByRole('heading', { name: 'Accept', exact: true })).toBeVisible();
  await page.getByRole('button', { name: /^Accept load/ }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'Say where the sets go.' })).toBeVisible();
  await page.getByLabel('Where the sets go').selectOption({ index: 1 });
  await page.getByRole('button', { name: /^Accept load/ }).click();
  await prove(page, 'Accept the load');
  await expect(page.getByText('Accepted', { exact: true }).first()).toBeVisible();

  await page.getByLabel('Why').fill('The printed record of the next cycle shows a fault.');
  await page.getByRole('button', { name: /^Reject load/ }).click();
  await prove(page, 'Reject the load');
  await page.getByRole('link', { name: 'What it put in doubt' }).click();
  await expect(page.getByRole('heading', { name: /put in doubt/ })).toBeVisible();
  await expect(
    page.getByRole('region', { name: 'Here when it was known' }).getByText('Held').first(),
  ).toBeVisible();
  await expectAccessible(page);
  for (const paper of ['load-list', 'touched-report']) {
    const answer = await page.request.get(`${address}/${paper}`);
    expect(answer.headers()['content-type']).toBe('application/pdf');
  }
});
