import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { SCREENS } from '@/lib/people/access';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { ROOT, VAR } from '../../scripts/bootstrap/places.mjs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';
import { actAs, expect, expectAccessible, type Hospital, test } from './harness';
import { watchPage } from './harness/page-problems';

/** How a session begins and ends: the first administrator of an empty hospital, idleness, and the absolute limit. */

const SIGNED_OUT = { cookies: [], origins: [] };
const MINUTE = 60_000;

/** `KITWRIGHT_DEMO=no npm start` on no database at all; answers once the console says how the first one gets in. */
async function startEmpty() {
  const port = await requireFreePort(0, '127.0.0.1');
  const database = join(VAR, 'test', 'hospitals', `empty-${port}.sqlite`);
  const child = spawn(process.execPath, ['scripts/serve.mjs'], {
    cwd: ROOT,
    env: {
      ...process.env,
      NODE_ENV: 'production',
      PORT: String(port),
      HOST: '127.0.0.1',
      KITWRIGHT_DB: database,
      KITWRIGHT_DEMO: 'no',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise((resolve) => child.on('close', resolve));
  let told = '';
  const said = new Promise<string>((resolve, reject) => {
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (chunk) => {
        told += chunk;
        const code = /\/first-run\s+code (\S+)\n/.exec(told)?.[1];
        if (code) resolve(code);
      });
    ended.then(() => reject(new Error(`the start ended: ${told}`)));
  });
  return {
    address: `http://127.0.0.1:${port}`,
    code: await said,
    console: () => told,
    async stop() {
      child.kill('SIGTERM');
      await ended;
      for (const end of ['', '-wal', '-shm', '-heads.jsonl']) rmSync(database + end, { force: true });
    },
  };
}

test('an empty hospital prints a code once, and who gives it becomes its administrator', async ({
  browser,
}) => {
  const empty = await startEmpty();
  try {
    const context = await browser.newContext({ baseURL: empty.address, storageState: SIGNED_OUT });
    const page = await context.newPage();
    const problems = await watchPage(page, empty.address);
    problems.expect(/401|422/);
    await page.goto('/sets');
    await expect(page).toHaveURL('/first-run');
    await expect(page.getByRole('heading', { level: 1, name: 'First start' })).toBeVisible();
    await expectAccessible(page, { screens: ['narrowest'] });

    // not the code, and a password that is no password: each is said, and nobody is named
    await page.getByLabel('Code', { exact: true }).fill('AAAA-BBBB-CCCC');
    await page.getByLabel('Your name').fill('Orla Pemberwick');
    await page.getByLabel('Password', { exact: true }).fill('too short');
    await page.getByRole('button', { name: 'Become the administrator' }).click();
    await expect(page.getByText(/at least 15 characters/i).first()).toBeVisible();
    await page.getByLabel('Password', { exact: true }).fill('heron tin meadow clasp');
    await page.getByRole('button', { name: 'Become the administrator' }).click();
    await expect(page.getByText(/That is not the code, or it is over/).first()).toBeVisible();
    await expect(page).toHaveURL('/first-run');

    // as it was read off the console, however it was typed
    await page.getByLabel('Code', { exact: true }).fill(` ${empty.code.toLowerCase()} `);
    await page.getByLabel('Password', { exact: true }).press('Enter');
    await expect(page).toHaveURL('/people');
    await expect(page.getByRole('button', { name: /Orla Pemberwick/ })).toBeVisible();
    await expect(page.getByRole('row', { name: /Orla Pemberwick/ })).toContainText('Administrator');

    // nothing is there yet, and every page that needs nothing says so without going wrong
    const wrong: string[] = [];
    for (const route of Object.keys(SCREENS).filter((one) => !one.includes('['))) {
      const answer = await page.request.get(route, { maxRedirects: 3 });
      if (answer.status() !== 200 && answer.status() !== 403) wrong.push(`${route}: ${answer.status()}`);
    }
    expect(wrong).toEqual([]);
    expect(empty.console()).not.toMatch(/error/i);

    // the code was good once
    const again = await browser.newContext({ baseURL: empty.address, storageState: SIGNED_OUT });
    const data = { code: empty.code, name: 'Somebody Else', password: 'heron tin meadow clasp' };
    const second = await again.request.post('/api/v1/people/first-run', { data });
    expect(second.status()).toBe(409);
    expect(await second.text()).toContain('There is an administrator already');
    const late = await again.newPage();
    await late.goto('/first-run');
    await expect(late.getByText('There is an administrator already')).toBeVisible();
    await late.getByRole('link', { name: 'Sign in' }).click();
    await late.getByLabel('Name', { exact: true }).fill('Orla Pemberwick');
    await late.getByLabel('Password', { exact: true }).fill('heron tin meadow clasp');
    await late.getByRole('button', { name: 'Sign in' }).click();
    await expect(late).toHaveURL('/');
    await expect(late.getByRole('button', { name: /Orla Pemberwick/ })).toBeVisible();
    expect(problems.unexpected()).toEqual([]);
    await again.close();
    await context.close();
  } finally {
    await empty.stop();
  }
});

/** What no test waits half an hour for: the sessions of a person, set back. */
function setBack({ database }: Hospital, person: string, change: string, ...values: string[]): void {
  const file = new Database(database, { timeout: 5_000 });
  try {
    const { changes } = file
      .prepare(`UPDATE sessions SET ${change} WHERE person_id = ? AND ended_at IS NULL`)
      .run(...values, person);
    expect(changes, `sessions of ${person}`).toBeGreaterThan(0);
  } finally {
    file.close();
  }
}
const ago = (minutes: number) => new Date(Date.now() - minutes * MINUTE).toISOString();

/** Whose the entries of a set's counts are, by the hospital's own record. */
function entriesOf({ database }: Hospital, setId: string): string[] {
  const file = new Database(database, { readonly: true });
  try {
    return file
      .prepare<[string], { person: string }>(
        `SELECT entry.person_id AS person FROM bench_entries AS entry
         JOIN bench_counts AS count ON count.id = entry.count_id WHERE count.set_id = ? ORDER BY entry.seq`,
      )
      .all(setId)
      .map(({ person }) => person);
  } finally {
    file.close();
  }
}

const cells = (page: Page) => page.locator('[data-line]');
const waiting = (page: Page) => page.locator('[data-line][data-pending]');
const lock = (page: Page) => page.getByRole('dialog', { name: 'Nobody is signed in any more' });

async function signInAtLock(page: Page, name: string): Promise<void> {
  await lock(page).getByLabel('Name', { exact: true }).fill(name);
  await lock(page).getByLabel('Password', { exact: true }).fill(DEMO_PASSWORD);
  await lock(page).getByRole('button', { name: 'Sign in and go on' }).click();
  await expect(lock(page)).toHaveCount(0);
}

const ENTRIES = '**/api/v1/bench/*/entries';
const WREN = 'person_wren-adeyemi';
const TOMAS = 'person_tomas-birkett';

test('an idle page locks, and what was half done at the bench comes back to the one who did it and to nobody else', async ({
  page,
  hospital,
  problems,
}) => {
  test.skip(hospital === null, 'sets sessions back in the database of its own server');
  if (hospital === null) return;
  problems.expect(/401|ERR_INTERNET_DISCONNECTED/);
  await actAs(page, WREN);
  // the page's clock is half an hour behind until it is let go; the session began before that
  await page.clock.install({ time: Date.now() - 31 * MINUTE });
  setBack(hospital, WREN, 'began_at = ?', ago(60));
  await page.goto('/sets/set_clo-02/count');
  await page.locator('[data-listening]').waitFor();
  await page.getByRole('button', { name: 'Begin to count' }).click();
  await expect(page.locator('[data-line][aria-current]')).toBeFocused();
  await page.keyboard.press('1');
  await expect(page.getByText('1 entry saved')).toBeVisible();
  await page.route(ENTRIES, (route) => route.abort('internetdisconnected'));
  await page.keyboard.press('1');
  await page.keyboard.press('1');
  await expect(waiting(page)).toHaveCount(2);

  // nobody touched this page for half an hour, but its person is at work in another tab
  const asked = page.waitForResponse(/\/api\/v1\/people\/session/);
  await page.clock.fastForward(31 * MINUTE);
  expect((await asked).status()).toBe(200);
  await expect(lock(page)).toHaveCount(0);
  // and now nowhere
  setBack(hospital, WREN, 'seen_at = ?', ago(31));
  await page.clock.fastForward(6_000);
  await expect(lock(page)).toBeVisible();
  await expect(lock(page)).toContainText('What was begun on this page is still here');
  // with the network back, nothing is taken while nobody is signed in
  const turnedAway = page.waitForResponse(/\/api\/v1\/bench\/.*\/entries/);
  await page.unroute(ENTRIES);
  await page.evaluate(() => window.dispatchEvent(new Event('online')));
  await page.clock.fastForward(9_000);
  expect((await turnedAway).status()).toBe(401);
  await expect(waiting(page)).toHaveCount(2);
  expect(entriesOf(hospital, 'set_clo-02')).toEqual([WREN]);
  await signInAtLock(page, 'Wren Adeyemi');
  await page.clock.fastForward(9_000);
  await expect(page.getByText('3 entries saved')).toBeVisible();
  expect(entriesOf(hospital, 'set_clo-02')).toEqual([WREN, WREN, WREN]);

  // the absolute limit ends the work of somebody busy as well
  await page.route(ENTRIES, (route) => route.abort('internetdisconnected'));
  await page.locator('[data-line][aria-current]').focus();
  await page.keyboard.press('1');
  await expect(waiting(page)).toHaveCount(1);
  setBack(hospital, WREN, 'ends_at = ?', ago(0));
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect(lock(page)).toBeVisible();
  // another person gets a bench of their own, and nothing of hers
  await signInAtLock(page, 'Tomas Birkett');
  await page.getByRole('button', { name: 'Begin to count' }).click();
  await expect(cells(page).first()).toBeVisible();
  await expect(waiting(page)).toHaveCount(0);
  await expect(page.locator('[data-line]:not([data-state="hollow"])')).toHaveCount(0);
  await page.reload();
  await expect(page.getByText('Nothing is entered yet.')).toBeVisible();
  await page.locator('[data-listening]').waitFor();
  expect(entriesOf(hospital, 'set_clo-02')).toEqual([WREN, WREN, WREN]);

  setBack(hospital, TOMAS, 'ends_at = ?', ago(0));
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await page.unroute(ENTRIES);
  await signInAtLock(page, 'Wren Adeyemi');
  await page.clock.fastForward(9_000);
  await expect(page.getByText('4 entries saved')).toBeVisible();
  expect(entriesOf(hospital, 'set_clo-02')).toEqual([WREN, WREN, WREN, WREN]);
});

test('past its absolute limit a session opens no page, however busy its person is', async ({
  page,
  hospital,
}) => {
  test.skip(hospital === null, 'sets sessions back in the database of its own server');
  if (hospital === null) return;
  await actAs(page, 'person_jolene-stott');
  await page.goto('/sets');
  await expect(page).toHaveURL('/sets');
  setBack(hospital, 'person_jolene-stott', 'ends_at = ?, seen_at = ?', ago(0), ago(0));
  await page.goto('/stock');
  await expect(page).toHaveURL('/sign-in?from=%2Fstock');
  await page.getByLabel('Name', { exact: true }).fill('Jolene Stott');
  await page.getByLabel('Password', { exact: true }).fill(DEMO_PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page).toHaveURL('/stock');
});
