import { sql } from 'drizzle-orm';
import { expect, test } from 'vitest';
import { role } from '@/lib/people/role';
import { scopeOf, TOKEN_ACTS } from '@/lib/people/tokens';
import { PEOPLE } from '@/seed/hospital/people';
import { apiServer } from '../../api/server';
import { knownThings } from './known';
import { BY_TOKEN } from './requests';
import { API_RUNS, apiTarget } from './target';

/** A short run of what `npm run test:fuzz -- api` does at length over HTTP: here with tokens, and without a socket. */
test('api: whatever comes is done or refused in words, as it is described', async () => {
  const { db, send, token } = await apiServer();
  const tokens = new Map<string, string>();
  for (const one of role.options) {
    const person = PEOPLE.find((candidate) => candidate.role === one);
    if (person) tokens.set(one, await token(person.id, scopeOf(person, TOKEN_ACTS)));
  }
  const known = await knownThings(async (query) => db.read.all(sql.raw(query)));
  const { taken, refused } = await apiTarget(
    { known, operations: BY_TOKEN },
    async ({ role: sender, method, path, body, headers }) => {
      const answer = await send(method, path, {
        token: tokens.get(sender) ?? null,
        body: JSON.stringify(body) ?? 'null',
        headers,
      });
      const contentType = answer.headers.get('content-type') ?? '';
      return { status: answer.status, contentType, text: await answer.text() };
    },
  ).attack(API_RUNS.short, 20260114);
  expect(taken + refused).toBe(API_RUNS.short);
  // neither the door alone was tried nor what is behind it alone
  expect(taken).toBeGreaterThan(API_RUNS.short / 20);
  expect(refused).toBeGreaterThan(API_RUNS.short / 20);
});
