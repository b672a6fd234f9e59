import { expect, test } from 'vitest';
import { apiServer } from './server';

/** The last day that can be written as YYYY-MM-DD: what whoever wants everything asks for. */
const LAST = '9999-12-31';

test('days at the end of all that can be written are asked for like any other', async () => {
  const { asPerson, send } = await apiServer();
  const lead = await asPerson('person_nell-ashdown');
  const cases = async (before: string) => {
    const ids: string[] = [];
    const query = { from: '2020-01-01', before, cancelled: 'yes' as const, limit: 20 };
    for await (const { id } of lead.every('GET /api/v1/cases', { query })) ids.push(id);
    return ids;
  };
  const all = await cases('2100-01-01');
  expect(all.length).toBeGreaterThan(20);
  expect(await cases(LAST)).toEqual(all);
  expect(await cases('9999-12-30')).toEqual(all);
  const { items: sterilisers } = await lead.done('GET /api/v1/sterilisers', {});
  for (const path of [
    `/api/v1/ledger?until=${LAST}`,
    `/api/v1/trace/sterilisers/${sterilisers[0]?.id}?from=2026-01-01&until=${LAST}`,
    `/api/v1/trace/people/person_nell-ashdown?from=2026-01-01&until=${LAST}`,
    `/api/v1/theatre-list/sessions?from=${LAST}`,
    `/api/v1/theatre-list/week?from=${LAST}`,
    `/api/v1/theatre-list/days/${LAST}`,
    `/api/v1/reports/day-before?day=${LAST}`,
    `/api/v1/reports/morning?day=${LAST}`,
    '/api/v1/cases?from=0001-01-01&before=0002-01-01',
  ]) {
    const answer = await send('GET', path, { headers: lead.headers }).catch((error: unknown) =>
      String(error),
    );
    expect([path, typeof answer === 'string' ? answer : answer.status]).toEqual([path, 200]);
  }
}, 120_000);
