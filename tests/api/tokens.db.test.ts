import { eq } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { writtenByToken } from '@/db/byToken';
import { findLedgerBreak } from '@/db/ledger';
import { issueToken } from '@/db/operations/api/issue-token';
import { revokeToken } from '@/db/operations/api/revoke-token';
import { saveLender } from '@/db/operations/loans/save-lender';
import { listTokens } from '@/db/queries/api/tokens';
import { apiTokens, ledger, loans, people, sets } from '@/db/schema';
import { newToken } from '@/db/secrets';
import { ENDPOINTS, type Endpoint, type Reach } from '@/lib/people/access';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { type Act, may, PERMITTED } from '@/lib/people/permissions';
import { NEEDS_PRESENCE, TOKEN_ACTS } from '@/lib/people/tokens';
import { tokenWords } from '@/lib/wording/tokens';
import { type DemoPerson, PEOPLE } from '@/seed/hospital/people';
import { apiServer, ROUTES } from './server';

const NOW = () => new Date().toISOString();
const EDDA = PEOPLE.find(({ role }) => role === 'administrator') as never;

const whoMay = (act: Act): DemoPerson => {
  const found = PEOPLE.find(({ role }) => may({ role }, act));
  if (!found) throw new Error(`nobody of the demo may ${act}`);
  return found.id;
};
const nowhere = (address: string) =>
  address.replace(/\[(\w+)\]/g, (_, place) => (place === 'id' ? 'case_none' : 'none'));

/** What a token needs for each address of the API, those that are open to anybody left out. */
const GUARDED = (Object.entries(ENDPOINTS) as [Endpoint, Reach][])
  .filter(([key, reach]) => key.includes(' /api/v1/') && reach !== 'anybody')
  .map(([key, reach]) => ({
    key,
    act: reach as Act,
    method: key.split(' ')[0] ?? '',
    address: key.split(' ')[1] ?? '',
  }));

test('the routes on disk are those that are declared, method by method', async () => {
  const found: string[] = [];
  for (const { address, file } of ROUTES) {
    const module = (await import(file)) as Record<string, unknown>;
    for (const method of ['GET', 'POST', 'PUT', 'PATCH', 'DELETE'])
      if (typeof module[method] === 'function') found.push(`${method} ${address}`);
  }
  const declared = Object.keys(ENDPOINTS).filter((key) => key.includes(' /api/v1/'));
  expect(found.sort()).toEqual(declared.sort());
});

/** The sentence of a problem, or of FHIR's own kind of one. */
const said = (body: { detail?: string; issue?: { diagnostics?: string; details?: { text?: string } }[] }) =>
  body.detail ?? body.issue?.[0]?.details?.text ?? body.issue?.[0]?.diagnostics;

test('every address lets in a token issued for its act, and no token without it', async () => {
  const { send, token } = await apiServer();
  const tokens = new Map<string, string>();
  const tokenFor = async (person: DemoPerson, scope: Act[]) => {
    const key = `${person} ${scope.join()}`;
    const secret = tokens.get(key) ?? (await token(person, scope));
    tokens.set(key, secret);
    return secret;
  };
  const wrong: string[] = [];
  for (const { key, act, method, address } of GUARDED) {
    const path = nowhere(address);
    const person = whoMay(act);
    // as much as a token of theirs can be issued for, and the same without the act that is asked for
    const all = TOKEN_ACTS.filter((one) => may({ role: roleOf(person) }, one));
    const without = await send(method, path, {
      token: await tokenFor(
        person,
        all.filter((one) => one !== act),
      ),
    });
    const reason = NEEDS_PRESENCE[act];
    if (act === 'readHospital') {
      // goes with every token
    } else if (without.status !== 403) wrong.push(`without it at ${key}: ${without.status}`);
    else {
      const detail = said(await without.json());
      const says = reason ? tokenWords.presence(reason) : tokenWords.notInScope(act);
      if (detail !== says) wrong.push(`${key} says: ${detail}`);
    }
    if (reason !== undefined) continue;
    const answer = await send(method, path, { token: await tokenFor(person, [act]) });
    // entries made by hand are sent from their screen alone, whatever the token is for
    const byHand = answer.status === 403 && said(await answer.clone().json()) === tokenWords.noSession;
    if (([401, 403].includes(answer.status) && !byHand) || answer.status >= 500)
      wrong.push(`with ${act} at ${key}: ${answer.status}`);
    await answer.body?.cancel();
  }
  expect(wrong).toEqual([]);
}, 240_000);

const roleOf = (id: DemoPerson) => {
  const found = PEOPLE.find((one) => one.id === id);
  if (!found) throw new Error(id);
  return found.role;
};

describe('what a token may be issued for', () => {
  test('no act that its person’s role does not do, and none that needs a person', async () => {
    const { db } = await apiServer();
    for (const [at, act] of (Object.keys(PERMITTED) as Act[]).entries()) {
      const { ok } = await issueToken({
        db,
        now: NOW(),
        newId: (prefix) => `${prefix}_${at}`,
        newToken,
        person: EDDA,
        entry: { personId: 'person_dilys-harrow', name: `Store ${at}`, scope: [act], days: 1 },
      });
      expect([act, ok]).toEqual([act, TOKEN_ACTS.includes(act) && may({ role: 'stockKeeper' }, act)]);
    }
  });

  test('whatever proves who somebody is, approves, releases or counts is for no token', () => {
    for (const act of [
      'ownAccount',
      'managePeople',
      'manageTokens',
      'acceptLoad',
      'liftHold',
      'closeRecall',
      'confirmPlan',
      'approveConfiguration',
      'approveFitRule',
      'approveRestock',
      'approveUsageOrder',
      'decideStockCount',
      'countInTheatre',
    ] as const)
      expect(TOKEN_ACTS).not.toContain(act);
  });
});

test('a token is kept as a hash alone, and told once', async () => {
  const { db, token } = await apiServer();
  const secret = await token('person_dilys-harrow', ['keepLenders']);
  expect(secret).toMatch(/^kitwright_[\w-]{43}$/);
  const rows = JSON.stringify([
    await db.read.select().from(apiTokens),
    await db.read.select().from(ledger),
    await listTokens(db),
  ]);
  expect(rows).not.toContain(secret);
  expect(rows).not.toContain(secret.slice('kitwright_'.length));
});

describe('a token opens nothing', () => {
  const read = '/api/v1/sets/list';
  test('when it is no token, was revoked, has expired, or its person has left', async () => {
    const { db, send, token } = await apiServer();
    const says = async (secret: string) => {
      const answer = await send('GET', read, { token: secret });
      const { detail } = (await answer.json()) as { detail: string };
      return [answer.status, detail, answer.headers.get('www-authenticate')];
    };
    const bad = 'Bearer error="invalid_token"';
    expect(await says('kitwright_nothing')).toEqual([401, tokenWords.unknown, bad]);

    const revoked = await token('person_dilys-harrow', []);
    expect((await send('GET', read, { token: revoked })).status).toBe(200);
    const [on] = await listTokens(db);
    if (!on) throw new Error('no token');
    await revokeToken({ db, now: NOW(), person: EDDA, tokenId: on.id });
    expect(await says(revoked)).toEqual([401, tokenWords.state('revoked'), bad]);

    const left = await token('person_kofi-brandreth', []);
    await db.tx(async (write) => {
      await write.update(people).set({ leftAt: NOW() }).where(eq(people.id, 'person_kofi-brandreth'));
    });
    expect(await says(left)).toEqual([401, tokenWords.state('leftBehind'), bad]);

    const issued = await issueToken({
      db,
      now: '2020-01-01T00:00:00.000Z',
      newId: (prefix) => `${prefix}_old`,
      newToken,
      person: EDDA,
      entry: { personId: 'person_dilys-harrow', name: 'Old', scope: [], days: 1 },
    });
    if (!issued.ok) throw new Error('not issued');
    expect(await says(issued.value.token)).toEqual([401, tokenWords.state('expired'), bad]);
  });

  test('that its person’s role no longer does', async () => {
    const { db, send, token } = await apiServer();
    const secret = await token('person_dilys-harrow', ['keepLenders']);
    expect((await send('POST', '/api/v1/lenders', { token: secret, body: {} })).status).toBe(422);
    await db.tx(async (write) => {
      await write.update(people).set({ role: 'technician' }).where(eq(people.id, 'person_dilys-harrow'));
    });
    const answer = await send('POST', '/api/v1/lenders', { token: secret, body: {} });
    expect(answer.status).toBe(403);
    expect(((await answer.json()) as { detail: string }).detail).toBe(tokenWords.notForRole('Dilys Harrow'));
  });
});

const lenderEntry = (name: string) => ({ name });

test('what is done by a token is in the ledger as its person’s, by that token, and nothing else is', async () => {
  const { db, send, token } = await apiServer();
  const secret = await token('person_dilys-harrow', ['keepLenders']);
  const answers = await Promise.all([
    send('POST', '/api/v1/lenders', { token: secret, body: lenderEntry('By token 1') }),
    saveLender({
      db,
      now: NOW(),
      newId: (p) => `${p}_by-hand`,
      person: dilys,
      entry: lenderEntry('By hand'),
      known: null,
    }),
    send('POST', '/api/v1/lenders', { token: secret, body: lenderEntry('By token 2') }),
  ]);
  expect(answers.map((one) => ('status' in one ? one.status : one.ok))).toEqual([201, true, 201]);
  const entries = (await db.read.select().from(ledger))
    .filter(({ action }) => action === 'add-lender')
    .slice(-3);
  const [on] = await listTokens(db);
  const marks = entries.map(({ personId, detail }) => [personId, (detail as { byToken?: unknown }).byToken]);
  const mark = { id: on?.id, name: on?.name };
  expect(marks.filter(([, by]) => by !== undefined)).toEqual([
    ['person_dilys-harrow', mark],
    ['person_dilys-harrow', mark],
  ]);
  expect(marks.filter(([, by]) => by === undefined)).toHaveLength(1);
  expect(await findLedgerBreak(db.read)).toBeNull();
  expect(on?.lastUsedAt).not.toBeNull();
});

const dilys = { id: 'person_dilys-harrow', name: 'Dilys Harrow', role: 'stockKeeper' } as never;

test('a secret sent beside a token proves nobody, and no try is counted', async () => {
  const { db, send, token } = await apiServer();
  const secret = await token('person_wren-adeyemi', ['packSet']);
  const [set] = await db.read.select().from(sets);
  for (const proof of [{ secret: DEMO_PASSWORD }, { secret: 'wrong' }]) {
    const answer = await send('POST', `/api/v1/sets/${set?.id}/pack`, {
      token: secret,
      body: { proof },
      headers: { 'If-Match': `"${set?.revision}"` },
    });
    expect(answer.status).toBe(403);
    expect(((await answer.json()) as { detail: string }).detail).toBe(tokenWords.noProof);
  }
});

test('an act inside an address that anybody may ask is asked of the token too', async () => {
  const { db, send, token } = await apiServer();
  const [loan] = await db.read.select().from(loans);
  if (!loan) throw new Error('the demo has no loan');
  const body = { asked: { act: 'callOff', because: 'not needed' } };
  const headers = { 'If-Match': `"${loan.revision}"` };
  const asked = async (secret: string) =>
    (await send('POST', `/api/v1/loans/${loan.id}`, { token: secret, body, headers })).status;
  expect(await asked(await token('person_dilys-harrow', []))).toBe(403);
  expect(await asked(await token('person_dilys-harrow', ['keepLoans', 'askForLoan']))).not.toBe(403);
});

test('entries made by hand come from the screen they were made on', async () => {
  const { send, token } = await apiServer();
  const secret = await token('person_wren-adeyemi', ['countSet', 'pickKit']);
  const entries = [{ entry: { id: 'entry_1', doneAt: NOW() }, session: { id: 'session_1', ticket: 'x' } }];
  for (const path of ['/api/v1/bench/count_1/entries', '/api/v1/cases/case_1/kit/picks']) {
    const answer = await send('POST', path, { token: secret, body: { entries } });
    expect([path, answer.status]).toEqual([path, 403]);
  }
});

test('an address that is none is told so as a problem, by every method', async () => {
  const { send } = await apiServer();
  for (const method of ['GET', 'POST', 'PUT', 'PATCH', 'DELETE']) {
    const answer = await send(method, '/api/v1/no/such/thing');
    expect(answer.status).toBe(404);
    expect(answer.headers.get('content-type')).toBe('application/problem+json');
  }
});

test('a work that is not by a token carries no mark, whoever began the writing', async () => {
  const { db } = await apiServer();
  const marked = writtenByToken(db, { id: 'token_a', name: 'A' });
  const seen: (string | null)[] = [];
  const { tokenOfWork } = await import('@/db/byToken');
  const work = async () => {
    await new Promise((done) => setTimeout(done, 1));
    seen.push(tokenOfWork()?.name ?? null);
  };
  await Promise.all([marked.tx(work), db.tx(work), marked.tx(work), db.tx(work)]);
  expect(seen).toEqual(['A', null, 'A', null]);
  expect(tokenOfWork()).toBeNull();
});
