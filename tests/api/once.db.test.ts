import { describe, expect, test } from 'vitest';
import { answeredOnce } from '@/db/answeredOnce';
import { saveLender } from '@/db/operations/loans/save-lender';
import { keptAnswers, ledger, lenders } from '@/db/schema';
import { apiWords } from '@/lib/wording/api';
import { apiServer } from './server';

const dilys = { id: 'person_dilys-harrow', name: 'Dilys Harrow', role: 'stockKeeper' } as never;
const post = '/api/v1/lenders';
const keyed = (key: string) => ({ 'Idempotency-Key': key });
const detailOf = async (answer: Response) => ((await answer.json()) as { detail: string }).detail;

async function hospital() {
  const server = await apiServer();
  const token = await server.token('person_dilys-harrow', ['keepLenders']);
  const count = async () => (await server.db.read.select().from(lenders)).length;
  return { ...server, count, secret: token };
}

describe('an Idempotency-Key', () => {
  test('sent again is answered letter by letter as before, and done once', async () => {
    const { send, count, secret } = await hospital();
    const before = await count();
    const given = { token: secret, body: { name: 'Once' }, headers: keyed('a-1') };
    const first = await send('POST', post, given);
    const again = await send('POST', post, given);
    expect([first.status, again.status]).toEqual([201, 201]);
    expect(await again.text()).toBe(await first.text());
    expect([first.headers.get('idempotency-replayed'), again.headers.get('idempotency-replayed')]).toEqual([
      null,
      'true',
    ]);
    expect(await count()).toBe(before + 1);
  });

  test('with anything else asked is refused, and nothing is done', async () => {
    const { send, count, secret } = await hospital();
    await send('POST', post, { token: secret, body: { name: 'One' }, headers: keyed('k') });
    const before = await count();
    const other = await send('POST', post, { token: secret, body: { name: 'Two' }, headers: keyed('k') });
    expect([other.status, await detailOf(other)]).toEqual([422, apiWords.keyUsed]);
    const elsewhere = await send('POST', `${post}?x=1`, {
      token: secret,
      body: { name: 'One' },
      headers: keyed('k'),
    });
    expect(elsewhere.status).toBe(422);
    expect(await count()).toBe(before);
  });

  test('is each sender’s own', async () => {
    const { send, count, secret, token } = await hospital();
    const another = await token('person_kofi-brandreth', ['keepLenders']);
    const before = await count();
    await send('POST', post, { token: secret, body: { name: 'Mine' }, headers: keyed('same') });
    const theirs = await send('POST', post, {
      token: another,
      body: { name: 'Theirs' },
      headers: keyed('same'),
    });
    expect(theirs.status).toBe(201);
    expect(await count()).toBe(before + 2);
  });

  test('sent twenty times at once is done once, and all are answered alike', async () => {
    const { send, count, secret } = await hospital();
    const before = await count();
    const given = { token: secret, body: { name: 'At once' }, headers: keyed('many') };
    const answers = await Promise.all(Array.from({ length: 20 }, () => send('POST', post, given)));
    const texts = await Promise.all(answers.map((one) => one.text()));
    expect(answers.map(({ status }) => status)).toEqual(Array(20).fill(201));
    expect(new Set(texts).size).toBe(1);
    expect(await count()).toBe(before + 1);
  });

  test('of a write that was refused may be sent again, put right', async () => {
    const { send, db, secret } = await hospital();
    expect((await send('POST', post, { token: secret, body: {}, headers: keyed('r') })).status).toBe(422);
    expect(await db.read.select().from(keptAnswers)).toEqual([]);
    expect(
      (await send('POST', post, { token: secret, body: { name: 'Right' }, headers: keyed('r') })).status,
    ).toBe(201);
  });

  test('of what is answered by nothing is kept as that, and done once', async () => {
    const { send, token, db } = await hospital();
    const secret = await token('person_gwen-sallis', ['setRemarks']);
    const given = {
      token: secret,
      body: { off: [] },
      headers: { ...keyed('empty'), 'If-Match': '"1"' },
    };
    const entered = async () => (await db.read.select().from(ledger)).length;
    const first = await send('PUT', '/api/v1/plans/remarks', given);
    expect(first.status).toBeLessThan(300);
    const before = await entered();
    const again = await send('PUT', '/api/v1/plans/remarks', given);
    expect([again.status, again.headers.get('idempotency-replayed')]).toEqual([first.status, 'true']);
    expect(await again.text()).toBe(await first.text());
    expect(await entered()).toBe(before);
  });

  test('is good for a day', async () => {
    const { db, send, count, secret } = await hospital();
    const given = { token: secret, body: { name: 'Old' }, headers: keyed('day') };
    await send('POST', post, given);
    const back = (hours: number) =>
      db.tx(async (write) => {
        await write
          .update(keptAnswers)
          .set({ keptAt: new Date(Date.now() - hours * 3_600_000).toISOString() });
      });
    await back(23.9);
    expect((await send('POST', post, given)).headers.get('idempotency-replayed')).toBe('true');
    await back(24.1);
    const before = await count();
    // done anew: the name is taken by the first, and the operation says so itself
    expect((await send('POST', post, given)).status).toBe(422);
    expect(await count()).toBe(before);
  });

  test('is kept as a digest, and what it is has a form', async () => {
    const { db, send, secret } = await hospital();
    await send('POST', post, { token: secret, body: { name: 'X' }, headers: keyed('tell-nobody') });
    expect(JSON.stringify(await db.read.select().from(keptAnswers))).not.toContain('tell-nobody');
    for (const wrong of ['', 'two words', 'x'.repeat(256)])
      expect(
        (await send('POST', post, { token: secret, body: { name: 'Y' }, headers: keyed(wrong) })).status,
      ).toBe(400);
  });

  test('is known in the very moment the thing is done: a process that ends between the two cannot be', async () => {
    const { db, send, count, secret } = await hospital();
    const before = await count();
    // the work alone, as it stands when the process ends before anything is answered
    const body = JSON.stringify({ name: 'Cut off' });
    const { createHash } = await import('node:crypto');
    const digest = (text: string) => createHash('sha256').update(text).digest('hex');
    const { listTokens } = await import('@/db/queries/api/tokens');
    const [token] = await listTokens(db);
    const once = answeredOnce(db, {
      sender: token?.id ?? '',
      keyHash: digest('cut'),
      requestHash: digest(`POST ${post}\n${body}`),
      at: new Date().toISOString(),
      status: 201,
    });
    const now = new Date().toISOString();
    const made = await saveLender({
      db: once,
      now,
      newId: (p) => `${p}_cut`,
      person: dilys,
      entry: { name: 'Cut off' },
      known: null,
    });
    expect(made.ok).toBe(true);
    const again = await send('POST', post, { token: secret, body, headers: keyed('cut') });
    expect([again.status, again.headers.get('idempotency-replayed')]).toEqual([201, 'true']);
    expect(await again.json()).toEqual(made.ok ? made.value : null);
    expect(await count()).toBe(before + 1);
  });

  test('and the thing stand or fall together', async () => {
    const { db } = await hospital();
    const entries = async () => (await db.read.select().from(ledger)).length;
    const before = await entries();
    const once = answeredOnce(db, {
      sender: 'token_x',
      // too short for the table: keeping fails after the work was written
      keyHash: 'short',
      requestHash: 'short',
      at: new Date().toISOString(),
      status: 201,
    });
    const now = new Date().toISOString();
    await expect(
      saveLender({
        db: once,
        now,
        newId: (p) => `${p}_f`,
        person: dilys,
        entry: { name: 'Falls' },
        known: null,
      }),
    ).rejects.toThrow();
    expect(await entries()).toBe(before);
  });

  test('is not taken where the answer is a secret', async () => {
    const { db, send, token } = await apiServer();
    // no token reaches such an address at all; a page that sends a key there is told so
    const secret = await token('person_dilys-harrow', []);
    expect(
      (await send('POST', '/api/v1/feeds', { token: secret, body: {}, headers: keyed('s') })).status,
    ).toBe(403);
    expect(await db.read.select().from(keptAnswers)).toEqual([]);
  });
});

describe('If-Match', () => {
  async function lender() {
    const { db, send, token } = await apiServer();
    const [one] = await db.read.select().from(lenders);
    if (!one) throw new Error('the demo has no lender');
    const secret = await token('person_dilys-harrow', ['keepLenders']);
    const path = `${post}/${one.id}`;
    const body = { inUse: true, entry: { name: one.name, note: 'By token' } };
    const put = (ifMatch: string | null, more: object = {}) =>
      send('PUT', path, {
        token: secret,
        body: { ...body, ...more },
        headers: ifMatch === null ? {} : { 'If-Match': ifMatch },
      });
    return { put, revision: one.revision };
  }

  test('is needed by a token, in its form', async () => {
    const { put } = await lender();
    const without = await put(null);
    expect([without.status, await detailOf(without)]).toEqual([428, apiWords.revisionNeeded]);
    for (const wrong of ['1', '*', 'W/"1"', '"a"', '"1", "2"'])
      expect([wrong, (await put(wrong)).status]).toEqual([wrong, 400]);
  });

  test('lets the present revision through, and answers with the next', async () => {
    const { put, revision } = await lender();
    const done = await put(`"${revision}"`);
    expect(done.status).toBe(200);
    const next = await put(`"${revision + 1}"`);
    expect(next.status).toBe(200);
  });

  test('stops any other, whatever the body says, and tells the present one', async () => {
    const { put, revision } = await lender();
    const stopped = await put(`"${revision + 7}"`, { baseRevision: revision });
    expect([stopped.status, stopped.headers.get('etag')]).toEqual([412, `"${revision}"`]);
    expect(await stopped.json()).toMatchObject({ status: 412, because: 'conflict', current: { revision } });
  });
});
