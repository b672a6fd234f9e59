import type { Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { placeText } from '@/lib/scanning/ownCodes';
import { actAs, expect, expectAccessible, test } from './harness';
import { scan } from './scanning-keys';

const ready = (page: Page) => page.locator('aside[data-listening]').waitFor();
const heaps = (page: Page) => page.getByRole('list', { name: /^Heaps of/ }).getByRole('listitem');
const toast = (page: Page, text: string | RegExp) => expect(page.getByText(text).first()).toBeVisible();

/** The GTIN of an item, off its page. */
const gtinOf = async (page: Page, code: string): Promise<string> => {
  await page.goto(`/catalogue/item_${code.toLowerCase()}`);
  const gtin = /0952\d{10}/.exec((await page.getByRole('main').textContent()) ?? '')?.[0];
  if (!gtin) throw new Error(`${code} has no GTIN`);
  return gtin;
};

test('the shelf is found by item and by lot, and says which heap is next and what is easily taken for it', async ({
  page,
}) => {
  await actAs(page, 'person_dilys-harrow');
  await page.goto('/stock');
  await page.getByRole('searchbox', { name: 'Search' }).pressSequentially('N40-40-A', { delay: 70 });
  const row = page.getByRole('table').getByRole('row').filter({ hasText: 'SF-N40-40' });
  // of three lots one is past its use-by, and of the other two the earlier is taken first
  await expect(row).toContainText('lot N40-40-A');
  await expect(row).toContainText('1 past use-by');
  await page.getByLabel('Listed by').selectOption('lots');
  await expect(page).toHaveURL(/view=lots/);
  await page.getByRole('searchbox', { name: 'Search' }).fill('SF-N40-40');
  const rows = page.getByRole('table').getByRole('row').filter({ hasText: 'SF-N40-40' });
  await expect(rows).toHaveCount(3);
  await expect(rows.nth(0)).toContainText('take first');
  await expect(rows.nth(0)).toContainText('N40-40-A');
  await expect(rows.nth(1)).toContainText('N40-40-B');
  await expect(rows.nth(2)).toContainText('past use-by');
  await rows.nth(0).getByRole('link').first().click();
  await expect(heaps(page)).toHaveCount(3);
  await expect(heaps(page).nth(0)).toContainText('take first');
  const alike = page.getByRole('list', { name: /^Easily taken for/ });
  await expect(alike).toContainText('SF-N40-38, the next length');
  await expect(alike).toContainText('both lie in Implant cupboard: keep them apart');
});

test('a heap is moved, corrected, held and let go, each with its dialog', async ({ page }) => {
  await actAs(page, 'person_maurice-oduya');
  await page.goto('/stock/item_sf-n40-42');
  const first = heaps(page).nth(0);
  await expect(first).toContainText('lot N40-42-A');
  const dialog = page.getByRole('dialog');

  await first.getByRole('button', { name: 'Move' }).click();
  await expectAccessible(page);
  await dialog.getByRole('button', { name: 'Move it' }).click();
  await expect(dialog).toContainText('Choose where it is put.');
  await dialog.getByRole('textbox', { name: /^Pieces/ }).fill('1');
  // a scanned place is where it goes
  await scan(page, placeText('place_general-stores'));
  await expect(dialog.getByRole('combobox', { name: /^To/ })).toHaveValue('place_general-stores');
  await dialog.getByRole('button', { name: 'Move it' }).click();
  await toast(page, '1 of lot N40-42-A now in General stores.');
  await expect(heaps(page)).toHaveCount(3);

  const cupboard = heaps(page).filter({ hasText: 'N40-42-A' }).filter({ hasText: 'Implant cupboard' });
  await cupboard.getByRole('button', { name: 'Correct' }).click();
  await dialog.getByRole('radio', { name: /^Dropped or damaged/ }).check();
  await dialog.getByRole('textbox', { name: /^Pieces/ }).fill('1');
  await expect(dialog).toContainText('Then 0 are on record.');
  await expectAccessible(page);
  await dialog.getByRole('button', { name: 'Put on record' }).click();
  await toast(page, 'lot N40-42-A: 0 on record now.');
  await expect(heaps(page)).toHaveCount(2);
  await expect(page.getByRole('table').getByRole('row').nth(1)).toContainText(
    'discarded, dropped or damaged',
  );

  const stores = heaps(page).filter({ hasText: 'General stores' });
  await stores.getByRole('button', { name: 'Hold' }).click();
  await dialog.getByRole('radio', { name: 'its label is wrong' }).check();
  await expectAccessible(page);
  await dialog.getByRole('button', { name: 'Hold it' }).click();
  await expect(stores).toContainText('held, because its label is wrong');
  await expect(heaps(page).nth(0)).toContainText('N40-42-B');

  await stores.getByRole('button', { name: 'Let go' }).click();
  await dialog.getByRole('button', { name: 'Go on' }).click();
  await expect(dialog).toContainText('Say why it may be used again.');
  await dialog.getByLabel('Why it may be used again').fill('Label read and right.');
  await expectAccessible(page);
  await dialog.getByRole('button', { name: 'Go on' }).click();
  await dialog.getByLabel(/Your /).fill(DEMO_PASSWORD);
  await dialog.getByRole('button', { name: 'Let it go' }).click();
  await expect(stores).toContainText('take first');
});

test('a delivery is received by scanner on a phone, asks for what the codes lack, and survives a reload', async ({
  page,
  problems,
}) => {
  problems.expect(/422/);
  await actAs(page, 'person_dilys-harrow');
  const [plate, screw] = [await gtinOf(page, 'SF-Q50-N-09'), await gtinOf(page, 'SF-L27-24')];
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/stock/receive');
  await ready(page);
  const lines = page.getByRole('list', { name: 'Lines of the delivery' }).getByRole('listitem');
  await page.getByLabel('From').fill('Northfold Implants');
  await page.getByLabel('Number on the note').fill('DN-4711');
  await scan(page, `]d201${plate}17290630${'10'}Q50-77`);
  await expect(lines).toHaveCount(1);
  await expect(lines.nth(0).getByRole('textbox', { name: /^Lot/ })).toHaveValue('Q50-77');
  await expect(lines.nth(0).getByRole('textbox', { name: /^Use-by/ })).toHaveValue('2029-06-30');
  // the same pack again is one more of it
  await scan(page, `]d201${plate}17290630${'10'}Q50-77`);
  await expect(lines.nth(0).getByRole('textbox', { name: /^How many/ })).toHaveValue('2');
  // a code without lot and use-by asks for them
  await scan(page, `]d201${screw}`);
  await expect(lines).toHaveCount(2);
  await expect(
    lines
      .nth(1)
      .getByText(/^Easily taken for|Keep apart/)
      .first(),
  ).toBeVisible();
  // its page of the catalogue says it comes unsterile: this one is sterile, and its use-by is asked for
  await lines.nth(1).getByRole('radio', { name: 'sterile', exact: true }).check();
  await page.reload();
  await ready(page);
  await expect(page.getByLabel('Number on the note')).toHaveValue('DN-4711');
  await expect(lines).toHaveCount(2);
  await page.getByRole('button', { name: 'Receive 3 pieces' }).click();
  const summary = page.getByRole('alert').filter({ hasText: 'Nothing was received yet' });
  await expect(summary).toBeVisible();
  await expectAccessible(page);
  await lines.nth(1).getByRole('textbox', { name: /^Lot/ }).fill('L27-9001');
  await lines
    .nth(1)
    .getByRole('textbox', { name: /^Use-by/ })
    .fill('2020-01');
  await page.getByRole('button', { name: 'Receive 3 pieces' }).click();
  await expect(lines.nth(1)).toContainText('is past its use-by (2020-01-31) on arrival');
  await lines.nth(1).getByLabel('Held, because').selectOption('pastUseBy');
  await page.getByRole('button', { name: 'Receive 3 pieces' }).click();
  await toast(page, '2 lines, 3 pieces put on their shelves.');
  await expect(lines).toHaveCount(0);
  await page.getByText('Northfold Implants, DN-4711: 2 lines, 3 pieces').click();
  await expect(page.getByRole('list', { name: 'Lines of DN-4711' })).toContainText(
    'held, because it is past its use-by',
  );

  // the same note again is asked about
  await page.goto('/stock/receive?item=item_sf-l27-24');
  await page.getByLabel('From').fill('northfold implants');
  await page.getByLabel('Number on the note').fill('dn-4711');
  await lines.nth(0).getByRole('textbox', { name: /^Lot/ }).fill('L27-9002');
  await lines
    .nth(0)
    .getByRole('textbox', { name: /^How many/ })
    .fill('1');
  await page.getByRole('button', { name: 'Receive 1 piece' }).click();
  await expect(page.getByText(/was received before/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Throw away' }).click();
  await page.getByRole('alertdialog').getByRole('button', { name: 'Throw it away' }).click();
  await expect(lines).toHaveCount(0);
  await page.goto('/stock/item_sf-l27-24');
  await expect(heaps(page).filter({ hasText: 'L27-9001' })).toContainText(
    'held, because it is past its use-by',
  );
});

test('a blind count on a tablet: one counts by scanning and by number, another again, a third decides', async ({
  page,
}) => {
  await actAs(page, 'person_dilys-harrow');
  const screw = await gtinOf(page, 'SF-L35-40');
  await page.setViewportSize({ width: 820, height: 1180 });
  await page.goto('/stock/counts');
  await page.getByRole('button', { name: 'Count all in Consignment cabinet' }).click();
  await expect(page).toHaveURL(/\/stock\/counts\/stockCount_/);
  const address = page.url();
  await ready(page);
  const lines = page.getByRole('list', { name: 'Heaps to count' }).getByRole('listitem');
  await expect(lines).toHaveCount(9);
  // two packs scanned one after the other are two pieces
  const row = lines.filter({ hasText: 'L35-8110' });
  await scan(page, `]d201${screw}10L35-8110`);
  await expect(row.getByRole('textbox')).toHaveValue('1');
  await scan(page, `]d201${screw}10L35-8110`);
  await expect(row.getByRole('textbox')).toHaveValue('2');
  // what is typed and not yet left counts too where the page is loaded anew in that moment
  const other = lines.filter({ hasText: 'PH35-0417' }).getByRole('textbox');
  await other.fill('1');
  await page.reload();
  await ready(page);
  await expect(other).toHaveValue('1');
  await other.fill('0');
  await page.keyboard.press('Tab');
  await expect(page.getByText('Everything entered is saved')).toBeVisible();
  // what was counted is there again, and the strip of scans no longer covers it
  await page.reload();
  await ready(page);
  await expect(row.getByRole('textbox')).toHaveValue('2');
  await expectAccessible(page);
  // how much there should be is nowhere for whoever counts
  const stock = await page.context().newPage();
  await stock.goto('/stock/item_sf-l35-40');
  await expect(heaps(stock).filter({ hasText: 'L35-8110' })).toContainText('how many is not shown');
  await stock.goto('/places/place_consignment');
  await expect(stock.getByText('you count it now').first()).toBeVisible();
  await stock.goto('/catalogue/item_sf-l35-40');
  await expect(stock.getByText('you count it now').first()).toBeVisible();
  await stock.close();

  await page.getByRole('button', { name: 'Close the count' }).click();
  await expect(page.getByRole('alertdialog')).toContainText('7 heaps have no figure');
  await page.getByRole('alertdialog').getByRole('button', { name: 'Close it' }).click();
  const differences = page.getByRole('list', { name: 'Differences' }).getByRole('listitem');
  await expect(differences).toHaveCount(1);
  await expect(differences).toContainText('1 fewer than on record');

  await actAs(page, 'person_kofi-brandreth');
  await page.goto(address);
  await expect(page.getByText('1 fewer than on record')).toHaveCount(0);
  await page.getByRole('button', { name: 'I count it again' }).click();
  await expect(lines).toHaveCount(1);
  await lines.getByRole('textbox').fill('0');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Everything entered is saved')).toBeVisible();
  await page.getByRole('button', { name: 'Close the count' }).click();
  await page.getByRole('alertdialog').getByRole('button', { name: 'Close it' }).click();
  await expect(differences).toContainText('to be decided by another person');

  await actAs(page, 'person_gwen-sallis');
  await page.goto(address);
  await expectAccessible(page);
  await differences.getByRole('button', { name: 'Accept' }).click();
  await expectAccessible(page);
  await page.getByRole('alertdialog').getByRole('button', { name: 'Accept it' }).click();
  await expect(differences).toContainText('accepted');
  await expect(page.getByText('Done', { exact: true }).first()).toBeVisible();
  await page.goto('/stock/item_sf-ph35-03');
  await expect(page.getByRole('table').getByRole('row').nth(1)).toContainText('not found, on the shelf');
});
