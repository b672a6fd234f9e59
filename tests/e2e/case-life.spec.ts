import type { Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { stockText } from '@/lib/scanning/ownCodes';
import { actAs, expect, test } from './harness';
import { scan } from './scanning-keys';
import { linesOf } from './two-counts';

// whole flows by several people: on a machine that is busy they take their time
test.describe.configure({ timeout: 120_000 });

/** Tomorrow's distal radius: a set, a screw in a sterile pack and a wire in a pouch. */
const RADIUS = '/cases/case_lm-26-9rtb';
const ANKLE = '/cases/case_lm-26-2hxd';
const SCREW = stockText('stock_demo-063');
const WIRE = stockText('stock_demo-021');

const listening = (page: Page) => page.locator('aside[data-listening]').waitFor();
const withKit = (page: Page) => page.getByRole('list', { name: 'With the kit' }).getByRole('listitem');

/** A press before the page is alive does nothing: once it is answered, the page needs no other. */
async function press(page: Page, name: string, address: RegExp): Promise<void> {
  await expect(async () => {
    const answered = page.waitForResponse(address, { timeout: 3_000 });
    await page.getByRole('button', { name, exact: true }).click();
    await answered;
  }).toPass();
}

async function prove(page: Page, confirm: string): Promise<void> {
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel(/password/i).fill(DEMO_PASSWORD);
  await dialog.getByRole('button', { name: confirm }).click();
}

async function proveSecond(page: Page, name: string, confirm: string): Promise<void> {
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('combobox', { name: 'Second person' }).fill(name);
  await page.getByRole('option', { name }).first().click();
  await prove(page, confirm);
}

test('a kit is picked by scanner, checked by another, issued, counted by two and brought back', async ({
  page,
  hospital,
}) => {
  if (!hospital) throw new Error('this test looks into the database');
  await page.goto(`${RADIUS}/pick`);
  await listening(page);
  await press(page, 'Begin picking', /\/kit\/list$/);
  const next = page.getByRole('region', { name: 'Next thing to fetch' });
  // the nearest place first
  await expect(next).toContainText('Pouch rack');

  await scan(page, 'SFS-01');
  const refused = page.getByRole('alert').filter({ hasText: 'is not on the list of LM-26-9RTB' });
  await expect(refused).toContainText('it asks for DRT-01');
  await refused.getByRole('button', { name: 'I have read it' }).click();
  await expect(refused).toBeHidden();

  await scan(page, 'DRT-01');
  await expect(withKit(page)).toHaveCount(1);
  await press(page, 'I have it', /\/kit\/picks$/);
  await expect(withKit(page)).toHaveCount(2);
  await press(page, 'I have it', /\/kit\/picks$/);
  await expect(withKit(page)).toHaveCount(3);
  await page.getByRole('button', { name: 'The kit is picked' }).click();
  await expect(page.getByText('Another person now scans everything again')).toBeVisible();

  // the second person is shown nothing of it
  await actAs(page, 'person_tomas-birkett');
  await page.goto(`${RADIUS}/pick`);
  await expect(page.getByText('What was picked is shown when you have finished.')).toBeVisible();
  await expect(page.getByRole('main').getByText('DRT-01')).toHaveCount(0);
  await page.goto(`${RADIUS}/check`);
  await listening(page);
  // a scan before the check is begun leads nowhere else, and counts as nothing
  await scan(page, 'DRT-01');
  await expect(page.getByText('DRT-01 was not entered: begin first')).toBeVisible();
  await press(page, 'Begin the check', /\/kit\/check$/);
  // a scan is of the check once its screen is there
  await expect(page.getByRole('button', { name: 'That is everything' })).toBeVisible();
  const seen = page.getByRole('list', { name: 'Seen' }).getByRole('listitem');
  for (const [at, code] of ['DRT-01', SCREW, WIRE].entries()) {
    await scan(page, code);
    await expect(seen).toHaveCount(at + 1);
  }
  await expect(page.getByText('Everything entered is saved')).toBeVisible();
  await page.getByRole('button', { name: 'That is everything' }).click();
  await prove(page, 'I checked it');
  await expect(page.getByText('everything is as it was picked.').first()).toBeVisible();

  await page.goto(RADIUS);
  await press(page, 'Issue the kit', /\/kit\/issue$/);
  await expect(page.getByText('Issued', { exact: true }).first()).toBeVisible();

  await actAs(page, 'person_ruth-okonjo');
  await page.goto(RADIUS);
  await press(page, 'Take it over in theatre', /\/kit\/take$/);
  await page.goto(`${RADIUS}/counts`);
  await press(page, 'Begin the first count', /\/theatre-counts$/);
  const lines = page.getByRole('list', { name: 'Lines' }).getByRole('button');
  const expected = linesOf(hospital, 'set_drt-01');
  await expect(lines).toHaveCount(expected.length);
  const short = expected.find(({ expected: pieces }) => pieces === 2);
  if (!short) throw new Error('no line of two');
  await expect(lines.first()).toBeFocused();
  for (const line of expected) {
    const figure = line === short ? 1 : line.expected;
    const current = page.locator('button[aria-current][id^="count-"]');
    await expect(current).toHaveId(`count-set_drt-01-${line.id}`);
    // ten or more: the sign for two digits first
    for (const key of figure < 10 ? String(figure) : `+${figure}`)
      await page.keyboard.press(key, { delay: 20 });
  }
  await expect(page.getByText('Everything entered is saved')).toBeVisible();
  await page.getByRole('button', { name: 'Close the first count' }).click();
  await proveSecond(page, 'Piotr Lennard', 'We counted together');
  await prove(page, 'Close the count');
  await expect(page.getByText(`${short.item}: 2 expected, 1 counted`)).toBeVisible();

  // the question goes with the set
  await page.goto('/sets/set_drt-01');
  await expect(page.getByRole('region', { name: 'Open questions' })).toContainText('2 expected, 1 counted');

  await actAs(page, 'person_wren-adeyemi');
  await page.goto(`${RADIUS}/back`);
  await listening(page);
  const issued = page.getByRole('list', { name: 'Issued to this case' });
  await scan(page, 'DRT-01');
  await expect(issued.getByRole('listitem').first()).toHaveAttribute('aria-current', 'true');
  await press(page, 'DRT-01: came back', /\/kit\/returns$/);
  const opened = issued.getByRole('button', { name: /: opened$/ });
  const packs = await opened.evaluateAll((buttons) =>
    buttons.map((one) => one.getAttribute('aria-label') ?? ''),
  );
  expect(packs).toHaveLength(2);
  for (const name of packs) {
    await press(page, name, /\/kit\/returns$/);
    await expect(issued.getByRole('button', { name, exact: true })).toHaveCount(0);
  }
  await expect(page.getByText('Everything is accounted for')).toBeVisible();
});

test('what is picked while the server can’t be reached is kept over a reload and saved once', async ({
  page,
  problems,
}) => {
  problems.expect(/kit\/picks/);
  problems.expect(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
  await page.goto(`${ANKLE}/pick`);
  await listening(page);
  await scan(page, 'SFS-01');
  await expect(page.getByText('SFS-01 was not entered: begin first')).toBeVisible();
  await expect(page).toHaveURL(/\/pick$/);
  await press(page, 'Begin picking', /\/kit\/list$/);
  // a scan is a pick once the list is on screen
  await expect(page.getByRole('region', { name: 'Next thing to fetch' })).toBeVisible();
  await page.route('**/kit/picks', (route) => route.abort());
  await scan(page, 'SFS-01');
  await expect(page.getByText('1 entry pending')).toBeVisible();
  await page.reload();
  await expect(page.getByText('1 entry pending')).toBeVisible();
  await page.unroute('**/kit/picks');
  await expect(page.getByText('Everything entered is saved')).toBeVisible({ timeout: 15_000 });
  await expect(withKit(page)).toHaveCount(1);
  await listening(page);
  // the same scan again is the same again
  await scan(page, 'SFS-01');
  await expect(page.getByText('SFS-01 is with the kit already.')).toBeVisible();
  await expect(withKit(page)).toHaveCount(1);
  // a second thought: put back, and free for others
  await page.getByRole('button', { name: 'Put SFS-01 back' }).click();
  await expect(withKit(page)).toHaveCount(0);
});
