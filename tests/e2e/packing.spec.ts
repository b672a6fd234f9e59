import type { Locator, Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { textOf, wordsOf } from '../pdf/readPdf';
import { actAs, expect, expectAccessible, test } from './harness';
import { scan } from './scanning-keys';
import { countTwice, linesOf } from './two-counts';

// whole flows by several people: on a machine that is busy they take their time
test.describe.configure({ timeout: 120_000 });

const TECHNICIAN = 'person_wren-adeyemi';
const SECOND = 'person_jolene-stott';

/** A proof is slow to check by design, and what follows it writes: on a busy machine that takes its time. */
const ANSWERED = { timeout: 30_000 };
/** Faster than this is taken for a scanner. */
const BY_HAND = { delay: 90 };

/** Goes on with Tab until this has the focus, as a person without a mouse does. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let step = 0; step < 20; step += 1) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  await expect(target).toBeFocused();
}

/** Waits until the page hears the scanner and the keys. */
const ready = (page: Page) => expect(page.locator('[data-listening]')).toBeVisible();

/** What stands on the printed label, without its spaces. */
async function printed(page: Page): Promise<string> {
  const paper = await page.request.get(`${page.url().split('?')[0]}/label`);
  expect(paper.headers()['content-type']).toBe('application/pdf');
  return textOf((await wordsOf(await paper.body())).flat()).replaceAll(/\s+/g, '');
}

async function labelShows(page: Page, alt: RegExp): Promise<void> {
  const label = page.getByRole('main').getByRole('img', { name: alt });
  await expect(label).toBeVisible(ANSWERED);
  // the dots came, and are no broken picture
  await expect
    .poll(() => label.evaluate((img: HTMLImageElement) => img.naturalWidth), ANSWERED)
    .toBeGreaterThan(100);
}

test('a set short of a back-up is packed by keyboard with its reason and a proof; printed again, the copy before is refused', async ({
  page,
  hospital,
}) => {
  if (!hospital) throw new Error('this test prepares a hospital of its own: run it without BASE_URL');
  const lines = linesOf(hospital, 'set_clo-02');
  const backUp = lines.find(({ mustHaveClass }) => mustHaveClass > 2);
  if (!backUp) throw new Error('CLO-02 has a back-up');
  const found = lines.map(({ id, expected }) => ({
    lineId: id,
    pieces: id === backUp.id ? expected - 1 : expected,
  }));
  await countTwice(hospital, 'set_clo-02', found, [TECHNICIAN, SECOND]);

  await actAs(page, TECHNICIAN);
  await page.goto('/sets/set_clo-02/pack');
  await ready(page);
  await expect(page.getByText('May be packed', { exact: true })).toBeVisible();
  const wrap = page.getByRole('radio', { name: 'Wrap' });
  await expect(wrap).not.toBeChecked();
  await page.getByRole('main').focus();
  await tabTo(page, wrap);
  await page.keyboard.press('Space');
  const pack = page.getByRole('main').getByRole('button', { name: 'Pack CLO-02', exact: true });
  await tabTo(page, pack);
  await page.keyboard.press('Enter');
  // nothing is packed short without its reason
  await expect(page.getByText('Say why it goes short.')).toBeVisible();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  const reason = page.getByLabel('Why it goes short');
  await page.getByRole('main').focus();
  await tabTo(page, reason);
  await page.keyboard.type('one is on its way from the store', BY_HAND);
  await tabTo(page, pack);
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('I packed');
  await tabTo(page, dialog.getByLabel('Your password'));
  await page.keyboard.type(DEMO_PASSWORD, BY_HAND);
  await page.keyboard.press('Enter');

  await expect(page).toHaveURL(/\/packs\/pack_[^/]+\?packed=now$/, ANSWERED);
  await labelShows(page, /^Label of P\d+-., copy 1$/);
  await expect(page.getByRole('link', { name: 'Print the label' })).toBeFocused();
  await expect(page.getByRole('region', { name: 'Goes short' })).toContainText(`1 × ${backUp.item}`);
  await expectAccessible(page, { screens: ['narrowest'] });
  const number = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  expect(await printed(page)).toContain('SHORT');

  await page.getByRole('button', { name: 'Another label' }).click();
  await dialog.getByLabel('Why another label is needed').fill('the first one tore');
  await dialog.getByRole('button', { name: 'Make copy 2' }).click();
  await labelShows(page, /, copy 2$/);
  await expect(dialog).toHaveCount(0);
  const strip = page.getByRole('complementary', { name: 'Scanner' });
  await scan(page, `${number}*1`);
  await expect(strip).toContainText(`This is an old copy of the label of pack ${number}`, ANSWERED);
  await scan(page, `${number}*2`);
  await expect(strip).toContainText(`Pack ${number}, CLO-02, SHORT`, ANSWERED);
});

test('short in class 1: asked for, decided by theatre manager and the surgeon of that case alone, and packed for no other', async ({
  page,
  problems,
}) => {
  // another surgeon is refused on purpose
  problems.expect(/422/);
  await actAs(page, TECHNICIAN);
  await page.goto('/sets/set_drt-04/short');
  await ready(page);
  await page.getByRole('button', { name: 'Take it back to the bench' }).click();
  await page.getByRole('button', { name: 'Ask for a decision' }).click();
  const send = page.getByRole('main').getByRole('button', { name: 'Send DRT-04 short' });
  await expect(send).toBeVisible(ANSWERED);
  await page.goto('/sets/set_drt-04/pack');
  await expect(page.getByText('Not yet', { exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Pack DRT-04', exact: true })).toHaveCount(0);

  await page.goto('/sets/set_drt-04/short');
  await ready(page);
  const booked = page.getByRole('combobox', { name: 'The one case it goes for' });
  await booked.fill('LM-26-9RTB');
  await page.getByRole('option', { name: /LM-26-9RTB/ }).click();
  await page.getByLabel('Why it goes short').fill('no other set is back before the case');
  await expectAccessible(page, { screens: ['narrowest'] });

  const dialog = page.getByRole('dialog');
  const prove = async (name: string, confirm: string) => {
    await dialog.getByRole('combobox', { name: 'Second person' }).fill(name);
    await page.getByRole('option', { name }).click();
    await dialog.getByLabel('Their password').fill(DEMO_PASSWORD);
    await dialog.getByRole('button', { name: confirm }).click();
  };
  // the case is Ines Halloran's: nobody else operates on it
  await send.click();
  await prove('Gwen Sallis', 'Go on to the next person');
  await expect(dialog).toContainText('Ines Halloran');
  await prove('Tobias Wray', 'Send DRT-04 short');
  await expect(page.getByText(/Tobias Wray does not operate on LM-26-9RTB/).first()).toBeVisible(ANSWERED);
  await page.keyboard.press('Escape');
  await expect(page.getByText('Decided: it goes short')).toHaveCount(0);
  await send.click();
  await prove('Gwen Sallis', 'Go on to the next person');
  await prove('Ines Halloran', 'Send DRT-04 short');
  await expect(page.getByText('Decided: it goes short')).toBeVisible(ANSWERED);

  await page.goto('/sets/set_drt-04/pack');
  await ready(page);
  await page.getByRole('radio', { name: 'Container' }).check();
  await page.getByRole('main').getByRole('button', { name: 'Pack DRT-04', exact: true }).click();
  await dialog.getByLabel('Your password').fill(DEMO_PASSWORD);
  await dialog.getByRole('button', { name: 'Pack DRT-04' }).click();
  await expect(page).toHaveURL(/\/packs\/pack_/, ANSWERED);
  await labelShows(page, /copy 1$/);
  await expect(page.getByRole('region', { name: 'Goes short, for LM-26-9RTB only' })).toContainText(
    'Gwen Sallis',
  );
  expect(await printed(page)).toContain('SHORT,forLM-26-9RTBonly');
});
