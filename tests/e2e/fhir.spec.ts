import { faultsOf } from '../published/fhir-r5/validate';
import { expect, test } from './harness';
import { sessionCookie } from './harness/act-as';

/** The FHIR service over HTTP; what it says is checked in tests/db/fhir and tests/published. */

const SERVICE = '/api/v1/fhir';

async function as(site: string, person: Parameters<typeof sessionCookie>[1]) {
  const { name, value } = await sessionCookie(site, person);
  return (path: string, accept = 'application/fhir+json') =>
    fetch(path.startsWith('http') ? path : site + SERVICE + path, {
      headers: { Cookie: `${name}=${value}`, Accept: accept },
    });
}

test('nobody reads more than what the service can do, and is told so as FHIR tells it', async ({
  baseURL,
}) => {
  const site = baseURL ?? '';
  const statement = await fetch(`${site}${SERVICE}/metadata`);
  expect(statement.status).toBe(200);
  expect(statement.headers.get('content-type')).toBe('application/fhir+json; charset=utf-8');
  const said = await statement.json();
  expect(faultsOf(said)).toEqual([]);
  expect(said.implementation.url).toBe(site + SERVICE);
  for (const path of ['/Device', '/Device/set.ben-01', '/export']) {
    const answer = await fetch(site + SERVICE + path);
    expect(answer.status).toBe(401);
    const outcome = await answer.json();
    expect(outcome).toMatchObject({ resourceType: 'OperationOutcome', issue: [{ code: 'login' }] });
    expect(faultsOf(outcome)).toEqual([]);
  }
});

test('a page leads to the next, and an entry to itself', async ({ baseURL }) => {
  const get = await as(baseURL ?? '', 'person_wren-adeyemi');
  const first = await (await get('/Device?_count=3')).json();
  expect(faultsOf(first)).toEqual([]);
  const [entry] = first.entry;
  expect(await (await get(entry.fullUrl)).json()).toEqual(entry.resource);
  const { url } = first.link.find(({ relation }: { relation: string }) => relation === 'next');
  const second = await (await get(url)).json();
  expect(second.entry).toHaveLength(3);
  expect(second.entry[0].fullUrl > first.entry[2].fullUrl).toBe(true);
});

test('what is not understood is refused with its own status', async ({ baseURL }) => {
  const get = await as(baseURL ?? '', 'person_wren-adeyemi');
  for (const [path, status, accept] of [
    ['/Device?colour=red', 400],
    ['/Device/set.none', 404],
    ['/Patient', 404],
    ['/Device', 406, 'application/fhir+xml'],
  ] as const) {
    const answer = await get(path, accept);
    expect(answer.status, path).toBe(status);
    expect(faultsOf(await answer.json())).toEqual([]);
  }
});

test('everything goes out to the manager as a file, and to nobody else', async ({ baseURL }) => {
  const site = baseURL ?? '';
  const refused = await (await as(site, 'person_wren-adeyemi'))('/export');
  expect(refused.status).toBe(403);
  expect(await refused.json()).toMatchObject({ issue: [{ code: 'forbidden' }] });
  const get = await as(site, 'person_gwen-sallis');
  const whole = await get('/export');
  expect(whole.headers.get('content-disposition')).toMatch(
    /^attachment; filename="fhir-\d{8}T\d{4}Z\.json"$/,
  );
  const { type, entry } = await whole.json();
  expect(type).toBe('collection');
  expect(entry.length).toBeGreaterThan(800);
  const lines = (await (await get('/export?as=ndjson&_type=Device')).text()).trimEnd().split('\n');
  expect(lines.length).toBeGreaterThan(40);
  for (const line of lines) expect(JSON.parse(line).resourceType).toBe('Device');
  for (const path of ['/export?as=ndjson', '/export?as=xml', '/export?_type=Patient'])
    expect((await get(path)).status, path).toBe(400);
});
