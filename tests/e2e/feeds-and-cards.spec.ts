import { request as anonymous } from '@playwright/test';
import ICAL from 'ical.js';
import { actAs, expect, test } from './harness';
import { bookCase, dayFromNow, saved } from './planning';

test('an address is made, read by a calendar without signing in, seen to be read, and revoked', async ({
  page,
  baseURL,
}) => {
  await actAs(page, 'person_ines-halloran');
  await page.goto('/account');
  await page.getByRole('link', { name: 'Make, see and revoke addresses' }).click();
  await page.getByRole('radio', { name: /Theatre list/ }).check();
  await page.getByRole('textbox', { name: 'What the address is for' }).fill('Watch');
  await page.getByRole('button', { name: 'Make the address' }).click();
  const shown = page.getByRole('region', { name: 'The new address' });
  await expect(shown).toContainText('Shown this once');
  const address = (await shown.getByText(/^http/).textContent()) ?? '';
  expect(address).toMatch(/\/feeds\/[\w-]{43}\.ics$/);
  const mine = page
    .getByRole('list', { name: 'Your calendar addresses' })
    .getByRole('listitem')
    .filter({ hasText: 'Watch' });
  await expect(mine).toContainText('never read');

  const nobody = await anonymous.newContext();
  const first = await nobody.get(address);
  expect(first.status()).toBe(200);
  expect(first.headers()['content-type']).toBe('text/calendar; charset=utf-8');
  expect(first.headers()['cache-control']).toBe('private, no-cache');
  const body = await first.body();
  const events = new ICAL.Component(ICAL.parse(body.toString('utf8'))).getAllSubcomponents('vevent');
  expect(events.length).toBeGreaterThan(20);
  expect(body.toString('utf8')).not.toContain('Halloran');
  const etag = first.headers().etag ?? '';
  const again = await nobody.get(address, { headers: { 'If-None-Match': `"x", ${etag}` } });
  expect([again.status(), (await again.body()).length, again.headers().etag]).toEqual([304, 0, etag]);
  expect((await nobody.get(address, { headers: { 'If-None-Match': '"x"' } })).status()).toBe(200);

  await page.reload();
  await expect(page.getByText(address)).toBeHidden();
  await expect(mine).toContainText(/last read today/);
  await mine.getByRole('button', { name: 'Revoke' }).click();
  await page.getByRole('button', { name: 'Revoke this address' }).click();
  await expect(mine).toBeHidden();
  expect((await nobody.get(address, { headers: { 'If-None-Match': etag } })).status()).toBe(410);

  // who guesses waits longer each time, and is told nothing; who has an address is not kept from it by that
  const other = await page.request.post(`${baseURL}/api/v1/feeds`, {
    data: { kind: 'sterileServices', theatreId: null, name: 'Bench' },
  });
  const { token } = (await other.json()) as { token: string };
  const guesses = await Promise.all(
    Array.from({ length: 8 }, (_, n) => nobody.get(`${baseURL}/feeds/${'guess'.repeat(8)}${n}.ics`)),
  );
  const statuses = guesses.map((guess) => guess.status()).sort();
  expect(new Set(statuses)).toEqual(new Set([404, 429]));
  for (const guess of guesses)
    if (guess.status() === 429) expect(Number(guess.headers()['retry-after'])).toBeGreaterThan(0);
  expect((await nobody.get(`${baseURL}/feeds/${token}`)).status()).toBe(200);
  await nobody.dispose();
});

test('a surgeon changes a card, a case is booked by it, and its pick list says what the card asks for', async ({
  page,
}) => {
  await actAs(page, 'person_ines-halloran');
  await page.goto('/plans');
  const row = page.getByRole('row', { name: /Forearm shaft fracture, plate.*Ines Halloran/ });
  // worked out by the kit engine after the list is on screen
  await expect(row).toContainText(/Ready|Short|Not established/, { timeout: 15_000 });
  await row.getByRole('link').first().click();
  await page.getByRole('link', { name: 'Change the card' }).click();
  await page.getByRole('button', { name: 'Add a line' }).click();
  const line = page.getByRole('list', { name: 'Wanted beside the plan' }).getByRole('listitem').last();
  await line.getByRole('combobox', { name: 'Item' }).fill('Bone hook');
  await page.getByRole('option', { name: /Bone hook, sharp/ }).click();
  await page.getByRole('button', { name: 'Save as version 2' }).click();
  await page.waitForURL(/\/plans\/cards\/card_demo-2$/);
  const changes = page.getByRole('table', { name: 'Changes from version 1 to version 2' });
  await expect(changes.getByRole('row', { name: /Bone hook, sharp/ })).toContainText('not on the card');

  await page.getByRole('link', { name: 'Book a case by it' }).click();
  await expect(page.getByLabel('Preference card')).toHaveValue('card_demo-2');
  await page.getByLabel('Begin the plan from').selectOption({ label: 'Forearm shaft, compression, 7 holes' });
  await bookCase(page, { day: dayFromNow(52), start: 'chosen' });
  await saved(page);
  const id = /case_[^/]+/.exec(page.url())?.[0] ?? '';
  await page.goto(`/cases/${id}`);
  await expect(page.getByText('Forearm shaft fracture, plate, version 2')).toBeVisible();
  await page.goto(`/cases/${id}/kit`);
  const asked = page.getByRole('region', { name: 'Asked for by the preference card' });
  await expect(asked.getByRole('listitem').filter({ hasText: '1 × Bone hook, sharp' })).toBeVisible();
  const list = await page.request.get(`/cases/${id}/pick-list`);
  expect(list.headers()['content-type']).toBe('application/pdf');
  const paper = await page.request.get('/plans/cards/card_demo-2/paper');
  expect(paper.headers()['content-type']).toBe('application/pdf');

  // another surgeon reads it and can't change it
  await actAs(page, 'person_tobias-wray');
  await page.goto('/plans/cards/card_demo-2');
  await expect(page.getByRole('heading', { level: 1, name: 'Forearm shaft fracture, plate' })).toBeVisible();
  await expect(page.getByRole('link', { name: 'Change the card' })).toBeHidden();
  await expect(page.getByRole('button', { name: 'Retire' })).toBeHidden();
});

test('a surgeon sees what others changed on the list since the last look, and chooses what to be told of', async ({
  page,
}) => {
  await actAs(page, 'person_gwen-sallis');
  const cancelled = await page.request.post('/api/v1/cases/case_lm-26-e5jx/cancel', {
    data: { baseRevision: 1, because: 'the theatre is flooded' },
  });
  expect(cancelled.status()).toBe(200);
  await actAs(page, 'person_ines-halloran');
  await page.goto('/');
  await expect(page.getByText(/changed on your list since you last looked/)).toBeVisible();
  await page.goto('/notices');
  const changed = page.getByRole('region', { name: 'Changed on your list' });
  await expect(changed).toContainText('Cancelled by Gwen Sallis: the theatre is flooded');
  await changed.getByRole('button', { name: 'I have looked at these' }).click();
  await expect(changed).toContainText('Nothing that somebody else did.');
  const kind = page.getByRole('checkbox', { name: 'What became of a piece you put aside' });
  await expect(kind).toBeChecked();
  await kind.uncheck();
  await expect(page.getByText('Kept. It holds for what happens from now on.')).toBeVisible();
  await page.reload();
  await expect(kind).not.toBeChecked();
  await expect(page.getByRole('checkbox', { name: 'Your case was cancelled' })).toHaveCount(0);
});
