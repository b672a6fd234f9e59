import { createHash } from 'node:crypto';
import Sqlite from 'better-sqlite3';
import { afterAll, beforeAll, expect, onTestFinished, test, vi } from 'vitest';
import { ENDPOINTS, type Endpoint } from '@/lib/people/access';
import type { Act } from '@/lib/people/permissions';
import { NEEDS_PRESENCE } from '@/lib/people/tokens';
import { DEMO_NOW } from '../setup/database';
import { DOCUMENT } from './contract';
import { CASES } from './revisions/cases';
import { type Attempt, type Desk, desk } from './revisions/desk';
import { LOADS } from './revisions/loads';
import { SETS } from './revisions/sets';
import { STANDING } from './revisions/standing';
import { SUPPLY } from './revisions/supply';

/** Whatever is written on top of a revision, by `If-Match` (RFC 9110, 13.1.1), on the demo hospital. */

beforeAll(() => {
  vi.useFakeTimers({ toFake: ['Date'], now: DEMO_NOW });
});
afterAll(() => {
  vi.useRealTimers();
});

const ROWS = { ...STANDING, ...SETS, ...LOADS, ...CASES, ...SUPPLY };

const TAKES_IF_MATCH = Object.entries(DOCUMENT.paths).flatMap(([address, item]) =>
  Object.entries(item).flatMap(([method, { parameters = [] }]) =>
    parameters.some(({ name }) => name === 'If-Match') ? [`${method.toUpperCase()} ${address}`] : [],
  ),
);
const addressOf = (row: string) => row.split(' ').slice(0, 2).join(' ');

test('every address that takes If-Match has a row here, and nothing that takes none', () => {
  expect([...new Set(Object.keys(ROWS).map(addressOf))].sort()).toEqual([...TAKES_IF_MATCH].sort());
});

test('whatever a body calls the revision that was seen, If-Match says it too', () => {
  const SEEN = /"(baseRevision|baseVersion|revision)"/;
  const without = Object.entries(DOCUMENT.paths).flatMap(([address, item]) =>
    Object.entries(item).flatMap(([method, { requestBody }]) => {
      const key = `${method.toUpperCase()} ${address}`;
      return SEEN.test(JSON.stringify(requestBody ?? {})) && !TAKES_IF_MATCH.includes(key) ? [key] : [];
    }),
  );
  // an order of a day is on top of the revision of each of its cases, and no header says so many
  expect(without).toEqual(['POST /api/v1/theatre-list/order']);
});

/** By whom it is done: by a token where one may, else by somebody who signed in. */
async function sender({ as, token }: Desk, key: string, { by, act, here }: Attempt) {
  const declared = ENDPOINTS[key.replaceAll(/\{(\w+)\}/g, '[$1]') as Endpoint] as Act;
  if (here || declared in NEEDS_PRESENCE) return { headers: (await as(by)).headers };
  return { token: await token(by, [act ?? declared]) };
}

/** A digest of every row there is: what was written and taken back again, as tries of a secret are, does not show. */
function contents(file: Sqlite.Database): string {
  const digest = createHash('sha256');
  const tables = file.prepare(`SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name`).pluck();
  for (const name of tables.all())
    for (const row of file.prepare(`SELECT * FROM "${name}"`).raw().iterate())
      digest.update(`${name} ${JSON.stringify(row)}\n`);
  return digest.digest('hex');
}

test('a stale revision is told the present one and changes nothing; the present one is taken', async () => {
  const here = await desk();
  const file = new Sqlite(process.env.KITWRIGHT_DB ?? '', { readonly: true });
  onTestFinished(() => void file.close());
  const wrong: string[] = [];
  for (const [row, find] of Object.entries(ROWS)) {
    const key = addressOf(row);
    const [method = '', address = ''] = key.split(' ');
    try {
      const attempt = await find(here);
      const { path, body, revision } = attempt;
      const at = address.replaceAll(/\{(\w+)\}/g, (_, name: string) => path[name] ?? '');
      const by = await sender(here, key, attempt);
      const put = (ifMatch: string) =>
        here.send(method, at, {
          body,
          ...('token' in by ? { token: by.token } : {}),
          headers: { ...('headers' in by ? by.headers : {}), 'If-Match': ifMatch },
        });
      // that somebody is here is noted now and then: not between these two
      await here.send('GET', '/api/v1/places?limit=1', by);
      const before = contents(file);
      const stale = await put(`"${revision + 7}"`);
      const said = await stale.text();
      const told = [stale.status, stale.headers.get('content-type'), stale.headers.get('etag')];
      if (told.join() !== [412, 'application/problem+json', `"${revision}"`].join())
        wrong.push(`${row}, stale: ${told.join()} ${said.slice(0, 300)}`);
      else if ((JSON.parse(said) as { status: number }).status !== 412) wrong.push(`${row}: ${said}`);
      if (contents(file) !== before) wrong.push(`${row}: it changed something`);
      const taken = await put(`"${revision}"`);
      if (!taken.ok) wrong.push(`${row}: ${taken.status} ${(await taken.text()).slice(0, 400)}`);
    } catch (error) {
      wrong.push(`${row}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  expect(wrong).toEqual([]);
}, 900_000);
