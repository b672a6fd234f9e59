import type { Page } from '@playwright/test';
import Database from 'better-sqlite3';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { stockText } from '@/lib/scanning/ownCodes';
import { actAs, expect, expectAccessible, test } from './harness';
import { scan } from './scanning-keys';
import { countTwice } from './two-counts';

// whole flows by several people: on a machine that is busy they take their time
test.describe.configure({ timeout: 180_000 });

/** The humerus that is in theatre as the demo begins: a plate of nine holes, and its set. */
const HUMERUS = '/cases/case_lm-26-u4ht';
const USE = `${HUMERUS}/use`;
/** Locking screws in sterile packs: 3.5 × 40 mm, and 2.7 × 20 mm. */
const [LONG, SHORT] = ['stock_demo-066', 'stock_demo-062'];

const listening = (page: Page) => page.locator('aside[data-listening]').waitFor();
const recorded = (page: Page) => page.getByRole('list', { name: 'What is recorded' }).getByRole('listitem');
const hole = (page: Page, id: string) => page.locator(`[data-hole="${id}"]`);
const saved = (page: Page) =>
  expect(page.getByText('Everything entered is saved')).toBeVisible({ timeout: 20_000 });

/** A touch before the page is alive does nothing. */
async function chooseHole(page: Page, id: string): Promise<void> {
  await expect(async () => {
    await hole(page, id).click();
    await expect(hole(page, id)).toHaveAttribute('aria-selected', 'true', { timeout: 1_000 });
  }).toPass();
}

async function touchKey(page: Page, name: RegExp): Promise<void> {
  await page.getByRole('button', { name }).first().click();
}

function inDatabase<T>(path: string, ask: (file: Database.Database) => T): T {
  const file = new Database(path);
  try {
    return ask(file);
  } finally {
    file.close();
  }
}

test('entries made while the server can’t be reached wait here over a reload, and are saved once', async ({
  page,
  problems,
  hospital,
}) => {
  if (!hospital) throw new Error('this test looks into the database');
  problems.expect(/use\/entries/);
  problems.expect(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
  await actAs(page, 'person_ruth-okonjo');
  await page.goto(USE);
  await listening(page);
  await page.route('**/use/entries', (route) => route.abort());
  await chooseHole(page, 'S3');
  await touchKey(page, /^Cortical screw 3\.5 × 24 mm.*, planned$/);
  await expect(page.getByText('1 entry pending')).toBeVisible();
  await expect(hole(page, 'S3')).toHaveAttribute('data-used', 'yes');
  await page.reload();
  await expect(page.getByText('1 entry pending')).toBeVisible();
  await expect(hole(page, 'S3')).toHaveAttribute('data-used', 'yes');
  await page.unroute('**/use/entries');
  await saved(page);
  await page.reload();
  await expect(recorded(page)).toHaveCount(1);
  await expect(recorded(page)).toContainText('P1, hole S3');
  // the set is put in by the program; the demo's was packed before packs were kept, and that is said
  await expect(recorded(page)).toContainText('lot not available: SFT-03, pack not on record');
  const rows = inDatabase(hospital.database, (file) =>
    file.prepare("SELECT count(*) AS rows FROM use_entries WHERE case_id = 'case_lm-26-u4ht'").get(),
  );
  expect(rows).toEqual({ rows: 1 });
});

test('two people at one table see each other’s entries', async ({ page, browser, baseURL }) => {
  await actAs(page, 'person_ruth-okonjo');
  await page.goto(USE);
  const other = await browser.newContext(baseURL ? { baseURL } : {});
  await actAs(other, 'person_piotr-lennard');
  const beside = await other.newPage();
  await beside.goto(USE);
  await chooseHole(beside, 'S7');
  // longer than planned, and than is accepted
  await touchKey(beside, /^Cortical screw 3\.5 × 28 mm/);
  await saved(beside);
  await expect(recorded(page).first()).toContainText('Piotr Lennard', { timeout: 30_000 });
  await expect(hole(page, 'S7')).toHaveAttribute('aria-label', /28 mm.*differs from the plan/);
  await expect(page.getByRole('list', { name: 'Other than planned' })).toContainText(
    'P1, hole S7: 28 mm, and 24 mm was planned.',
  );
  // what one entered by mistake the other takes back
  await page.getByRole('button', { name: /^Take back: Cortical screw 3\.5 × 28 mm/ }).click();
  await saved(page);
  await expect(recorded(page).first()).toContainText('taken back');
  await expect(hole(beside, 'S7')).not.toHaveAttribute('data-used', 'yes', { timeout: 30_000 });
  await other.close();
});

test('who checks a set blind is given no record of what was used from it, on paper or as a file', async ({
  page,
  hospital,
}) => {
  if (!hospital) throw new Error('this test looks into the database');
  const [used] = inDatabase(hospital.database, (file) =>
    file
      .prepare<[], { caseId: string; setId: string; code: string }>(
        `SELECT entry.case_id AS caseId, held.id AS setId, held.code
         FROM sets held JOIN use_entries entry ON json_extract(entry.act, '$.source.setId') = held.id
         WHERE held.step = 'onBench' ORDER BY entry.seq DESC LIMIT 1`,
      )
      .all(),
  );
  if (!used) throw new Error('a set on the bench was used in a case');
  // somebody else counts it first, so that there is something to check
  const held = inDatabase(hospital.database, (file) =>
    file
      .prepare<[string], { lineId: string; pieces: number }>(
        'SELECT line_id AS lineId, found AS pieces FROM set_contents WHERE set_id = ?',
      )
      .all(used.setId),
  );
  await countTwice(hospital, used.setId, held, ['person_tomas-birkett']);
  const addresses = ['paper', 'export', 'export?as=json'].map((end) => `/cases/${used.caseId}/use/${end}`);
  await actAs(page, 'person_wren-adeyemi');
  for (const address of addresses) expect((await page.request.get(address)).status(), address).toBe(200);
  const countId = `count_${crypto.randomUUID()}`;
  const data = { countId, setId: used.setId, purpose: 'check' };
  const begun = await page.request.post('/api/v1/bench', { data });
  expect(await begun.text()).toContain(countId);
  for (const address of addresses) {
    const refused = await page.request.get(address);
    expect(refused.status(), address).toBe(409);
    expect(await refused.text()).toContain(used.code);
  }
  // nor is it told what the case had, or what it cost
  await page.goto(`/trace/result?of=case&case=${used.caseId}`);
  const pieces = page.getByRole('region', { name: 'Pieces' });
  await expect(pieces).toContainText(`${used.code} You count this set`);
  await expect(pieces.getByText(`from ${used.code}`, { exact: false })).toHaveCount(0);
  await page.goto('/reports/costs?months=12');
  await expect(page.getByRole('note').filter({ hasText: 'left out here and in the files' })).toBeVisible({
    timeout: 60_000,
  });
  const reference = inDatabase(hospital.database, (file) =>
    file.prepare<[string], string>('SELECT reference FROM cases WHERE id = ?').pluck().get(used.caseId),
  );
  const costs = async () =>
    (await page.request.get('/reports/costs/export?table=cases&months=12&as=csv')).text();
  expect(await costs()).not.toContain(reference);
  await page.request.post(`/api/v1/bench/${countId}/abandon`, { data: {} });
  for (const address of addresses) expect((await page.request.get(address)).status(), address).toBe(200);
  expect(await costs()).toContain(reference);
});

test('what is used is recorded by touch and scan, closed with what stays open, and corrected', async ({
  page,
  hospital,
}) => {
  if (!hospital) throw new Error('this test looks into the database');
  const inSlot = () =>
    inDatabase(
      hospital.database,
      (file) =>
        file
          .prepare<[], { found: number }>(
            `SELECT held.found FROM set_contents held JOIN configuration_lines line ON line.id = held.line_id
             JOIN items item ON item.id = line.item_id
             WHERE held.set_id = 'set_sft-03' AND item.name = 'Cortical screw 3.5 × 24 mm, self-tapping'`,
          )
          .get()?.found ?? 0,
    );
  const before = inSlot();
  // theatre asks for two more packs
  await page.goto(`${HUMERUS}/pick`);
  await listening(page);
  for (const [at, stock] of [LONG, SHORT].entries()) {
    await scan(page, stockText(stock));
    await expect(page.getByRole('list', { name: 'Asked for later' }).getByRole('listitem')).toHaveCount(
      at + 1,
    );
  }

  await actAs(page, 'person_ruth-okonjo');
  await page.goto(USE);
  await listening(page);
  await page.getByRole('button', { name: 'P1: which plate went in' }).click();
  await touchKey(page, /9 holes.*, planned$/);
  await expect(page.getByText('Recorded: Narrow two-zone plate 3.5, 9 holes')).toBeVisible();

  // a scan with a hole in hand goes there
  await chooseHole(page, 'S1');
  await scan(page, stockText(LONG));
  await expect(hole(page, 'S1')).toHaveAttribute('data-used', 'yes');
  await expect(recorded(page).first()).toContainText('lot L35-8110, as issued');
  // of a pack that is recorded nothing more is said; the same code again is the same pack
  await saved(page);

  // a lot that is held meanwhile is not opened
  inDatabase(hospital.database, (file) =>
    file.prepare("UPDATE stock SET held_because = 'recall' WHERE id = ?").run(SHORT),
  );
  await page.reload();
  await listening(page);
  await page.getByRole('button', { name: 'Single packs' }).click();
  await expect(page.getByText('Do not open: held')).toBeVisible();
  await page.getByRole('button', { name: /^Locking screw 2\.7 × 20 mm.*: implanted$/ }).click();
  const stop = page.getByRole('alertdialog');
  await expect(stop).toContainText('It is held');
  await expectAccessible(page);
  await stop.getByRole('button', { name: 'It was opened all the same' }).click();
  await expect(stop).toContainText('Say how it came to be opened.');
  await stop.getByRole('button', { name: 'Put it aside, unopened' }).click();
  await page.getByRole('button', { name: 'Returned unopened', exact: true }).click();
  await page.getByRole('button', { name: /^Locking screw 2\.7 × 20 mm.*: returned unopened$/ }).click();
  await expect(recorded(page).first()).toContainText('Returned unopened');

  // a piece out of the set that nobody can find, and a bit that broke
  await page.getByRole('button', { name: 'SFT-03', exact: true }).click();
  await page.getByRole('button', { name: 'Not found', exact: true }).click();
  await page.getByRole('button', { name: 'at a count' }).click();
  await page.getByRole('button', { name: /^Cortical screw 3\.5 × 24 mm.*: not found$/ }).click();
  await expect(recorded(page).first()).toContainText('Not found at a count');
  await page.getByRole('button', { name: /Instruments too/ }).click();
  await page.getByRole('button', { name: 'Dropped or damaged', exact: true }).click();
  await page
    .getByRole('button', { name: /^Drill bit .*: dropped or damaged$/ })
    .first()
    .click();
  await expect(recorded(page).first()).toContainText('Dropped or damaged');
  await saved(page);

  // with what the tests before may have left in its hole
  const implanted = await recorded(page)
    .filter({ hasText: 'Cortical screw 3.5 × 24 mm' })
    .filter({ hasText: 'Implanted' })
    .count();
  const open = page.getByRole('list', { name: 'What stays open' });
  await expect(open).toContainText('SFT-03: no final count says');
  await expect(open).toContainText('Cortical screw 3.5 × 24 mm, self-tapping, SFT-03: one not found.');
  await page.getByRole('button', { name: /^Close the record: .* open$/ }).click();
  const proof = page.getByRole('dialog');
  await expect(proof).toContainText('written into it by name');
  await expectAccessible(page);
  await proof.getByLabel(/password/i).fill(DEMO_PASSWORD);
  await proof.getByRole('button', { name: 'Close the record' }).click();
  await expect(page.getByText(/^Closed, \d open$/)).toBeVisible();

  // the slot is short at once
  expect(inSlot()).toBe(before - 1 - implanted);

  // corrected by further entries, with the reason
  await page.getByRole('button', { name: 'Correct the record…' }).click();
  const correct = page.getByRole('dialog');
  await expectAccessible(page);
  await correct
    .getByLabel('Why it is corrected')
    .pressSequentially('The bit was sound after all.', { delay: 70 });
  await correct.getByRole('button', { name: 'Begin correcting' }).click();
  await page.getByRole('button', { name: /^Take back: Drill bit/ }).click();
  await expect(page.getByText('Taken back by Ruth Okonjo', { exact: false })).toContainText(
    'The bit was sound after all.',
  );
  await page.reload();
  await expect(page.getByText('Taken back by Ruth Okonjo', { exact: false })).toBeVisible();

  // the return says the same
  await actAs(page, 'person_wren-adeyemi');
  await page.goto(`${HUMERUS}/back`);
  const things = page.getByRole('list', { name: 'Issued to this case' });
  await expect(things).toContainText('at the table: implanted');
  await expect(things).toContainText('at the table: returned unopened: its barrier is judged here');

  // paper and files
  const paper = await page.request.get(`${USE}/paper`);
  expect(paper.headers()['content-type']).toBe('application/pdf');
  const csv = await (await page.request.get(`${USE}/export?as=csv`)).text();
  expect(csv).toContain('Locking screw 3.5 × 40 mm, self-tapping');
  expect(csv).toContain('L35-8110,as issued');
  const json = await (await page.request.get(`${USE}/export?as=json`)).json();
  expect(json).toMatchObject({ format: 'record-of-use/1', reference: 'LM-26-U4HT' });
});
