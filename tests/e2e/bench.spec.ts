import type { Browser, Page } from '@playwright/test';
import { sendEntries, type WaitingEntry } from '@/app/sets/[id]/count/waiting-room';
import type { BenchEntry } from '@/lib/bench/act';
import { Outbox } from '@/lib/bench/outbox';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import type { DemoPerson } from '@/seed/hospital/people';
import { flakyNetwork } from './flaky-network';
import { ALONE, actAs, expect, expectAccessible, test } from './harness';
import { sessionCookie } from './harness/act-as';
import { scan } from './scanning-keys';

// whole flows by several people: on a machine that is busy they take their time
test.describe.configure({ timeout: 120_000 });

const FIRST = 'person_wren-adeyemi';
const SECOND = 'person_jolene-stott';

/** A proof is slow to check by design, and what follows it writes: on a busy machine that takes its time. */
const ANSWERED = { timeout: 30_000 };

const cells = (page: Page) => page.locator('[data-line]');
const hollow = (page: Page) => page.locator('[data-line][data-state="hollow"]');
const pending = (page: Page) => page.locator('[data-line][data-pending]');

/** Begins a count of a set, or takes up the one that is open. */
async function begin(page: Page, set: string, act = 'Begin to count'): Promise<void> {
  await page.goto(`/sets/set_${set}/count`);
  const button = page.getByRole('button', { name: act });
  await expect(button.or(cells(page).first())).toBeVisible();
  if (await button.isVisible())
    // a press before the page is alive does nothing: once it is answered, the page needs no other
    await expect(async () => {
      const answered = page.waitForResponse(/\/api\/v1\/bench$/, { timeout: 3_000 });
      await button.click();
      await answered;
    }).toPass();
  await expect(cells(page).first()).toBeVisible({ timeout: 30_000 });
  await expect(page.locator('[data-line][aria-current]')).toBeFocused();
}

/** Counts the layer in view by keys, one figure a line; answers how many lines it has. */
async function countLayer(page: Page, keyOf: (at: number) => string = () => '1'): Promise<number> {
  const lines = await cells(page).count();
  for (let at = 0; at < lines; at += 1) {
    const before = await hollow(page).count();
    await page.keyboard.press(keyOf(at));
    // a line of ten or more takes its figure by Enter
    if ((await hollow(page).count()) === before) await page.keyboard.press('Enter');
  }
  await expect(hollow(page)).toHaveCount(0);
  return lines;
}

/** Counts every layer by keys and answers the number of lines. */
async function countSet(page: Page, keyOf?: (at: number) => string): Promise<number> {
  const layers = await page.getByRole('navigation', { name: 'Layers' }).getByRole('button').count();
  let lines = 0;
  for (let layer = 0; layer < layers; layer += 1) {
    lines += await countLayer(page, keyOf);
    if (layer < layers - 1) await page.keyboard.press('PageDown');
  }
  return lines;
}

async function prove(page: Page, confirm: string): Promise<void> {
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel(/password/i).fill(DEMO_PASSWORD);
  await dialog.getByRole('button', { name: confirm }).click();
}

async function proveSecond(page: Page, name: string, confirm: string): Promise<void> {
  const dialog = page.getByRole('dialog', { name: /Second person|Count again together/ });
  await dialog.getByRole('combobox', { name: 'Second person' }).fill(name);
  await page.getByRole('option', { name }).first().click();
  await prove(page, confirm);
}

async function close(page: Page, what = 'Close the count'): Promise<void> {
  await expect(page.getByText(/entr(y|ies) saved/)).toBeVisible();
  await page.getByRole('button', { name: what }).click();
  await prove(page, what);
}

async function as(browser: Browser, person: DemoPerson, url: string): Promise<Page> {
  const context = await browser.newContext({ baseURL: url });
  await actAs(context, person);
  return context.newPage();
}

test(
  'a set of many lines is counted by keyboard faster than on paper; nothing is filled in, and it becomes what the set holds',
  ALONE,
  async ({ page }, info) => {
    await actAs(page, FIRST);
    await begin(page, 'sfs-09');
    await expect(cells(page).filter({ hasText: /\d+ ?of/ })).toHaveCount(0);
    await expect(page.getByRole('button', { name: /all correct|as expected/i })).toHaveCount(0);
    const began = Date.now();
    const lines = await countSet(page);
    const seconds = (Date.now() - began) / 1000;
    const perSixty = (seconds / lines) * 60;
    info.annotations.push({ type: 'measured', description: `${lines} lines in ${seconds.toFixed(1)} s` });
    console.log(
      `bench: ${lines} lines counted by keyboard in ${seconds.toFixed(1)} s; 60 lines: ${perSixty.toFixed(1)} s`,
    );
    expect(perSixty).toBeLessThan(90);
    await expect(page.getByText('stops', { exact: true }).first()).toBeVisible();
    await close(page);
    await expect(page).toHaveURL(/\/sets\/set_sfs-09$/, ANSWERED);
  },
);

test('entries look hollow until they are saved, survive the network and a reload, and a count with one pending is not closed', async ({
  page,
  problems,
}) => {
  problems.expect(/ERR_INTERNET_DISCONNECTED|ERR_FAILED|Failed to fetch|request failed/);
  await actAs(page, FIRST);
  await begin(page, 'clo-02');
  await page.keyboard.press('2');
  await expect(page.getByText('1 entry saved')).toBeVisible();
  await expect(pending(page)).toHaveCount(0);
  await page.route('**/api/v1/bench/*/entries', (route) => route.abort('internetdisconnected'));
  await page.keyboard.press('1');
  await page.keyboard.press('1');
  await expect(pending(page)).toHaveCount(2);
  await expect(page.getByRole('button', { name: 'Close: 2 pending' })).toBeVisible();
  await page.getByRole('button', { name: 'Close: 2 pending' }).click();
  await expect(page.getByText(/can’t be closed: 2 entries are not saved yet/)).toBeVisible();
  await page.reload();
  await expect(pending(page)).toHaveCount(2);
  await expectAccessible(page, { screens: ['desk', 'narrowest'] });
  await page.unroute('**/api/v1/bench/*/entries');
  await page.evaluate(() => window.dispatchEvent(new Event('online')));
  await expect(pending(page)).toHaveCount(0, { timeout: 15_000 });
  await expect(page.getByText('3 entries saved')).toBeVisible();

  // an answer that is lost after the work was done: the entry is there once
  let lost = 0;
  await page.route('**/api/v1/bench/*/entries', async (route) => {
    const answer = await route.fetch();
    lost += 1;
    if (lost === 1) await route.abort('connectionreset');
    else await route.fulfill({ response: answer });
  });
  problems.expect(/ERR_CONNECTION_RESET/);
  await page.locator('[data-line][aria-current]').focus();
  await page.keyboard.press('1');
  await expect(page.getByText('4 entries saved')).toBeVisible({ timeout: 15_000 });
  expect(lost).toBeGreaterThan(1);
  await page.reload();
  await expect(page.getByText('4 entries saved')).toBeVisible();
});

test('by touch: faults go to repair or are discarded, what is short is refilled by two, and the last entry is undone', async ({
  page,
}) => {
  await actAs(page, FIRST);
  await begin(page, 'sfs-03');
  const pad = page.getByRole('region', { name: 'Line in hand' });
  const key = pad.getByRole('button', { name: '2', exact: true });
  const box = await key.boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(48);
  await cells(page).first().click();
  await key.click();
  await expect(cells(page).first()).toHaveAccessibleName(/2 of \d+/);
  await expect(cells(page).nth(1)).toBeFocused();
  await cells(page).first().click();
  await pad.getByRole('button', { name: 'blunt' }).click();
  await expect(pad.getByText('where does it go?')).toBeVisible();
  await expect(pad.getByRole('button', { name: /straight/i })).toHaveCount(0);
  await pad.getByRole('button', { name: 'Repair' }).click();
  await expect(cells(page).first()).toHaveAccessibleName(/1 of \d+.*1 put aside/);
  await pad.getByRole('button', { name: 'Undo the last entry' }).click();
  await expect(cells(page).first()).toHaveAccessibleName(/2 of \d+/);
  await expect(cells(page).first()).not.toHaveAccessibleName(/put aside/);

  // a wire has one of the next diameter beside it: two people look at it
  const wire = page.getByRole('button', { name: /Wire 1.6 × 150 mm/ });
  await wire.click();
  await page.keyboard.press('3');
  await wire.click();
  await page.keyboard.press('f');
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('Two people look at this one');
  await dialog.getByRole('radio', { name: /lot W16-2/ }).check();
  await dialog.getByRole('radio', { name: /A second person looks/ }).check();
  await dialog.getByLabel('Pieces put in').fill('1');
  await dialog.getByRole('button', { name: 'Put in, with the second person…' }).click();
  await proveSecond(page, 'Jolene Stott', 'It is the right piece');
  await expect(wire).toHaveAccessibleName(/4 of \d+/);
});

test('by scanner: a piece adds one to its line, a serial counts once, a piece of no line is foreign', async ({
  page,
}) => {
  await actAs(page, FIRST);
  await begin(page, 'sfs-03');
  const bit = page.getByRole('button', { name: /^Drill bit 2.5 × 110 mm/ });
  await bit.click();
  await page.keyboard.press('0');
  // GTINs of the demo; a serial number after AI 21 (GS1 General Specifications)
  await scan(page, ']d2010952162354969721A1');
  await expect(bit).toHaveAccessibleName(/1 of 2/);
  await scan(page, ']d2010952162354969721A1');
  await expect(page.getByText(/already counted \d\d:\d\d/i).first()).toBeVisible();
  await expect(bit).toHaveAccessibleName(/1 of 2/);
  await scan(page, ']d2010952162354969721A2');
  await expect(bit).toHaveAccessibleName(/2 of 2/);
  // taken back, the same piece counts when it is scanned again
  await page.getByRole('button', { name: 'Undo the last entry' }).click();
  await expect(bit).toHaveAccessibleName(/1 of 2/);
  await scan(page, ']d2010952162354969721A2');
  await expect(bit).toHaveAccessibleName(/2 of 2/);
  // and the strip says the same as the bench
  const strip = page.locator('[data-scan-state]').first();
  await expect(strip).toContainText('One more');
  await expect(strip).toHaveAttribute('data-scan-state', 'understood');
  await scan(page, ']d2010952689977288610B7');
  await expect(page.getByText('1 foreign')).toBeVisible();
  await page.getByRole('button', { name: /^Take home:/ }).click();
  const dialog = page.getByRole('dialog');
  // the sets that hold it are looked up meanwhile; “elsewhere” is there from the beginning
  await dialog
    .getByRole('radio', { name: /holds this item|lacks/ })
    .first()
    .check();
  await dialog.getByRole('button', { name: 'They are on their way home' }).click();
  await expect(page.getByText('on its way home')).toBeVisible();
});

test('the second check is blind; where it differs both figures are kept, and two people settle the line together', async ({
  page,
  browser,
  baseURL,
}) => {
  await actAs(page, FIRST);
  await begin(page, 'pwr-03');
  await countSet(page, () => '2');
  await close(page);
  await expect(page).toHaveURL(/\/sets\/set_pwr-03$/, ANSWERED);

  const other = await as(browser, SECOND, baseURL ?? '');
  await begin(other, 'pwr-03', 'Begin the blind second check');
  await expect(other.getByRole('heading', { level: 1 })).toContainText('Second check');
  await expect(other.locator('[data-line] strong')).toHaveCount(0);
  await expect(other.getByText('Nothing is entered yet.')).toBeVisible();
  await countSet(other, (at) => (at === 0 ? '3' : '2'));
  await close(other, 'Close the second check');
  await expect(other.getByRole('heading', { name: 'Two counts differ' })).toBeVisible(ANSWERED);
  await expect(other.getByRole('table').getByRole('cell').first()).toContainText('2');
  await expect(other.getByRole('table').getByRole('cell').nth(1)).toContainText('3');
  await expectAccessible(other, { screens: ['desk', 'narrowest'] });

  await other.getByRole('button', { name: 'Count the disputed lines again' }).click();
  await expect(cells(other).first()).toBeVisible();
  await countSet(other, () => '3');
  await expect(other.getByText(/entr(y|ies) saved/)).toBeVisible();
  await other.getByRole('button', { name: 'Settle these lines' }).click();
  await proveSecond(other, 'Wren Adeyemi', 'We counted together');
  await prove(other, 'Settle these lines');
  await expect(other).toHaveURL(/\/sets\/set_pwr-03$/, ANSWERED);
  await other.goto('/sets/set_pwr-03/count');
  await expect(other.getByRole('heading', { name: 'Where it stands' })).toBeVisible();
  await expect(other.getByRole('heading', { name: 'Two counts differ' })).toHaveCount(0);
  await other.context().close();
});

test('over a network that loses requests, and answers after the work was done, every entry is there once', async ({
  page,
  baseURL,
}) => {
  const home = baseURL ?? '';
  await actAs(page, SECOND);
  await page.goto('/sets/set_sfl-07/count');
  const countId = `count_flaky-${Date.now()}`;
  const begun = await page.request.post('/api/v1/bench', {
    data: { countId, setId: 'set_sfl-07', purpose: 'count' },
  });
  expect(begun.status()).toBe(201);
  const open = ((await begun.json()) as { countId: string }).countId;
  const signedIn = await fetch(`${home}/api/v1/people/sign-in`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ name: 'Jolene Stott', password: DEMO_PASSWORD }),
  });
  const { sessionId, ticket } = (await signedIn.json()) as { sessionId: string; ticket: string };
  const cookie = await sessionCookie(home, SECOND);
  const network = await flakyNetwork(home, `${cookie.name}=${cookie.value}`, 20260114);
  const kept = new Map<string, WaitingEntry>();
  const acknowledged = new Set<string>();
  const outbox = new Outbox<WaitingEntry>({
    room: {
      all: () => [...kept.values()],
      put: (one) => void kept.set(one.id, one),
      remove: (id) => void kept.delete(id),
    },
    send: (items) => sendEntries(open, items.slice(0, 5), network.address),
    wait: () => new Promise((done) => setTimeout(done, 2)),
    onChange: () => undefined,
    onStored: ({ id }) => acknowledged.add(id),
    order: () => 0,
  });
  const made = Array.from(
    { length: 120 },
    (_, at): BenchEntry => ({
      id: `entry_flaky-${open.slice(6)}-${at}`,
      act: { kind: 'note', text: `piece ${at}` },
      doneAt: new Date(Date.now() + at).toISOString(),
    }),
  );
  for (const entry of made)
    outbox.add({ id: entry.id, entry: entry as WaitingEntry['entry'], session: { id: sessionId, ticket } });
  await outbox.flush();
  await network.close();
  expect(network.lost.requests).toBeGreaterThan(0);
  expect(network.lost.answers).toBeGreaterThan(0);
  expect([...acknowledged]).toEqual(made.map(({ id }) => id));
  expect(outbox.state).toMatchObject({ pending: [], refused: [] });
  await page.reload();
  await expect(page.getByText('120 entries saved')).toBeVisible();
});
