import { expect, test } from './harness';
import { actAs } from './harness/act-as';

/** The way of a token from the screen to a request and back, and the pages that tell how to ask. */

test('a token is issued, shown once, used, seen as used, and revoked', async ({ page, baseURL }) => {
  await actAs(page, 'person_edda-winslow');
  await page.goto('/people');
  await page.getByRole('link', { name: 'Tokens' }).click();
  await page.getByLabel('Acts as').selectOption({ label: 'Dilys Harrow, stock and loan keeper' });
  await page.getByLabel('Which system it is for').fill('Ordering system');
  // what needs a person is not offered, nor what a stock keeper may not do
  await expect(page.getByLabel('Keep lenders')).toBeVisible();
  await expect(page.getByLabel('Close recall')).toHaveCount(0);
  await expect(page.getByLabel('Book case')).toHaveCount(0);
  await page.getByLabel('Keep lenders').check();
  await page.getByRole('button', { name: 'Issue the token' }).click();
  const once = page.getByRole('status').filter({ hasText: 'Token for “Ordering system”' });
  const secret = (await once.getByText(/^kitwright_/).textContent()) ?? '';
  const open = page.getByRole('list', { name: 'Open tokens' });
  await expect(open).toContainText('never used');

  const ask = (method: string, path: string, body?: unknown, headers: Record<string, string> = {}) =>
    fetch(`${baseURL}${path}`, {
      method,
      headers: {
        Authorization: `Bearer ${secret}`,
        ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  const given = { name: 'Tarn Instruments' };
  const made = await ask('POST', '/api/v1/lenders', given, { 'Idempotency-Key': 'order-1' });
  expect([made.status, made.headers.get('etag')]).toEqual([201, '"1"']);
  const again = await ask('POST', '/api/v1/lenders', given, { 'Idempotency-Key': 'order-1' });
  expect([again.status, again.headers.get('idempotency-replayed')]).toEqual([201, 'true']);
  expect(await again.json()).toEqual(await made.json());
  expect((await ask('POST', '/api/v1/places', {})).status).toBe(403);
  // a page is not reached by a token
  const aPage = await fetch(`${baseURL}/people`, {
    headers: { Authorization: `Bearer ${secret}` },
    redirect: 'manual',
  });
  expect(aPage.status).toBe(307);
  const paper = await ask('GET', '/sets/set_sfl-07/count-sheet');
  expect([paper.status, paper.headers.get('content-type')]).toEqual([200, 'application/pdf']);

  await page.goto('/ledger');
  await expect(page.getByText('Dilys Harrow, by the token “Ordering system”').first()).toBeVisible();

  await page.goto('/people/tokens');
  await expect(page.getByText(secret)).toHaveCount(0);
  await expect(open).toContainText('last used');
  await open.getByRole('button', { name: 'Revoke' }).click();
  await page.getByRole('button', { name: 'Revoke this token' }).click();
  await expect(page.getByRole('list', { name: 'Tokens that are over' })).toContainText('Ordering system');
  const over = await ask('GET', '/api/v1/sets/list');
  expect([over.status, over.headers.get('www-authenticate')]).toEqual([401, 'Bearer error="invalid_token"']);
});

test('a token is asked for what is missing, beside its field', async ({ page, problems }) => {
  problems.expect(/422/);
  await actAs(page, 'person_edda-winslow');
  await page.goto('/people/tokens');
  await page.getByLabel('Acts as').selectOption({ index: 1 });
  await page.getByLabel('Good for').fill('400');
  await page.getByRole('button', { name: 'Issue the token' }).click();
  await expect(page.getByText('at most 366 days').first()).toBeVisible();
});

test('the pages of the API say of each address what it takes and answers', async ({ page, baseURL }) => {
  await page.goto('/api-docs');
  await page.getByRole('link', { name: 'POST /api/v1/lenders', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'POST /api/v1/lenders' })).toBeVisible();
  await expect(page.getByText('Yes, one that was issued for this act.')).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: 'Idempotency-Key' })).toBeVisible();
  await page.goto('/api-docs/postRecallsByIdClose');
  await expect(page.getByText('No: it needs a person who is here.')).toBeVisible();
  const answer = await fetch(`${baseURL}/api/v1/openapi.json`);
  expect(await answer.json()).toMatchObject({ openapi: '3.1.0' });
});

test('an address that is none is answered as a problem and not as a page', async ({ baseURL }) => {
  const answer = await fetch(`${baseURL}/api/v1/nothing/here`, { method: 'POST' });
  expect([answer.status, answer.headers.get('content-type')]).toEqual([404, 'application/problem+json']);
});
