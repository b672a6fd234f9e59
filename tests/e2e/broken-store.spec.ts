import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { actAs, expect, expectAccessible, type Hospital, test } from './harness';

/** What is shown while the store cannot be read, and that trying again is of use once it can. */

test.skip(Boolean(process.env.BASE_URL), 'takes a table out of its own database');

/** A table is away for as long as `during` takes, as after damage to the file. */
async function without(
  hospital: Hospital | null,
  table: string,
  during: (back: () => void) => Promise<void>,
) {
  const move = (from: string, to: string) => {
    const store = new Database(hospital?.database ?? '');
    store.pragma('legacy_alter_table = ON');
    store.pragma('foreign_keys = OFF');
    store.exec(`ALTER TABLE ${from} RENAME TO ${to}`);
    store.close();
  };
  let isAway = true;
  const back = () => {
    if (isAway) move(`${table}_away`, table);
    isAway = false;
  };
  move(table, `${table}_away`);
  try {
    await during(back);
  } finally {
    back();
  }
}

/** The reference a page shows stands in the log, with what went wrong. */
async function expectInLog(page: Page, hospital: Hospital | null): Promise<void> {
  const reference = await page.getByRole('alert').locator('code').textContent();
  expect(reference).toMatch(/^\d+$/);
  const lines = readFileSync(hospital?.log ?? '', 'utf8')
    .split('\n')
    .filter((line) => line.includes(`"digest":"${reference}"`));
  expect(lines.join('\n')).toMatch(/"level":"error".*no such table/);
}

test('where the frame itself fails: its own words and look, under the policy of every page, and back again', async ({
  page,
  hospital,
  problems,
}) => {
  problems.expect(/500|Minified React error #441/);
  await without(hospital, 'sessions', async (back) => {
    const answer = await page.goto('/sets');
    expect(answer?.status()).toBe(500);
    expect(answer?.headers()['content-security-policy']).toMatch(
      /script-src 'nonce-[^']+' 'strict-dynamic';/,
    );
    await expect(page).toHaveTitle('Kitwright could not start this page');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Kitwright could not start this page');
    await expect(page.getByText('Try again in a minute.')).toBeVisible();
    const look = await page.evaluate(() => ({
      font: getComputedStyle(document.querySelector('h1') ?? document.body).fontFamily,
      paper: getComputedStyle(document.documentElement).backgroundColor,
    }));
    expect(look.font).toMatch(/serif/i);
    expect(look.font).not.toMatch(/^"?times/i);
    expect(look.paper).not.toBe('rgba(0, 0, 0, 0)');
    await expectAccessible(page);
    await expectInLog(page, hospital);
    // still away: the same again, in words
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Kitwright could not start this page');
    back();
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Sets' })).toBeVisible();
  });
});

test('where one page fails, the frame stays, and trying again asks for it anew', async ({
  page,
  hospital,
  problems,
}) => {
  problems.expect(/500|Minified React error #441/);
  await actAs(page, 'person_edda-winslow');
  await without(hospital, 'places', async (back) => {
    await page.goto('/stock');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('This page could not be shown');
    await expect(page.getByRole('navigation').first()).toBeVisible();
    await expectInLog(page, hospital);
    back();
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Stock' })).toBeVisible();
  });
});
