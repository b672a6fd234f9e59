import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { actAs, expect, expectAccessible, test } from './harness';

test('a correction is shown beside what it corrects, and the exported ledger verifies by itself', async ({
  page,
  hospital,
}, testInfo) => {
  await actAs(page, 'person_maurice-oduya');
  // something to correct: a code that was scanned three quarters of an hour ago
  const doneAt = new Date(Date.now() - 45 * 60_000).toISOString();
  await page.goto('/ledger');
  const stored = await page.evaluate(async (at) => {
    const scan = {
      id: `scan_${crypto.randomUUID()}`,
      text: 'KW-UNKNOWN-1',
      how: 'typed',
      separators: 'mayBeLost',
      context: { kind: 'none' },
      doneAt: at,
      session: null,
    };
    const answer = await fetch('/api/v1/scans', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ scans: [scan] }),
    });
    return answer.status;
  }, doneAt);
  expect(stored).toBe(200);
  await page.goto('/ledger');
  const entry = page.getByRole('listitem').filter({ hasText: 'Code scanned KW-UNKNOWN-1' }).first();
  await expect(entry).toContainText('late: entered 45 min after');
  await entry.getByText('What was written').click();
  await expectAccessible(page);

  await entry.getByRole('button', { name: 'Correct …' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Correct the record' }).click();
  await expect(dialog).toContainText('Choose what in the entry is wrong.');
  await dialog.getByLabel('What is wrong').selectOption({ label: 'text: KW-UNKNOWN-1' });
  await dialog.getByLabel('What it should say').fill('KW-UNKNOWN-2');
  await dialog.getByLabel('Why').fill('the label was smudged');
  await dialog.getByLabel('I correct the record').fill('larkmoor infirmary');
  await dialog.getByRole('button', { name: 'Correct the record' }).click();
  await expect(dialog).toBeHidden();
  const correction = page.getByRole('listitem').filter({ hasText: 'Record corrected' }).first();
  await expect(correction).toContainText('text: KW-UNKNOWN-1 KW-UNKNOWN-2. Because: the label was smudged');
  await expect(entry).toContainText('corrected');
  await expect(entry).toContainText('by Maurice Oduya');

  await page.getByLabel('Person').selectOption({ label: 'Maurice Oduya' });
  await page.getByLabel('Act').selectOption({ label: 'Record corrected' });
  await page.getByRole('button', { name: 'Show' }).click();
  await expect(page.getByText(/^Entry \d/).first()).toBeVisible();
  await expect(page.getByText('verified up to entry')).toBeVisible();

  const file = testInfo.outputPath('ledger.jsonl');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Whole ledger for an auditor' }).click(),
  ]);
  writeFileSync(file, readFileSync(await download.path()));
  expect(download.suggestedFilename()).toMatch(/-head-\d+-[0-9a-f]{16}\.jsonl$/);
  const heads = hospital ? ['--heads', `${hospital.database}-heads.jsonl`] : [];
  const said = execFileSync(process.execPath, ['scripts/ledger/standalone-verify.mjs', file, ...heads], {
    encoding: 'utf8',
  });
  expect(said).toContain('Nothing was changed.');
});
