import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type Act, may } from '@/lib/people/permissions';
import { READS } from '@/lib/people/reads';
import { role as roles } from '@/lib/people/role';
import { type DemoPerson, PEOPLE } from '@/seed/hospital/people';
import { DEMO_NOW } from '../setup/database';
import { DOCUMENT, described } from './contract';
import { MADE_TWICE, madeBusy } from './reads/busy';
import { type ApiServer, apiServer } from './server';

/** Every address that is read by the API, on the demo hospital. `send` holds each answer against the description by itself. */

beforeAll(() => {
  // the demo is of this moment: what is planned ahead, and what is due, is looked for from then on
  vi.useFakeTimers({ toFake: ['Date'], now: DEMO_NOW });
});
afterAll(() => {
  vi.useRealTimers();
});

type Row = Record<string, unknown>;
type Found = { items: Row[]; next: string | null };
interface Read {
  address: string;
  act: Act;
  isList: boolean;
}

const parametersOf = (address: string) =>
  (DOCUMENT.paths[described(address)]?.get?.parameters ?? []).map(({ name }) => name);
const ALL: Read[] = Object.entries(READS).map(([key, act]) => {
  const address = key.slice('GET '.length);
  return { address, act, isList: parametersOf(address).includes('cursor') };
});

const text = (row: Row, name: string): string => String(row[name]);

/** A hospital that people have signed in to. */
async function hospital() {
  const server = await apiServer();
  const signedIn = new Map<string, Awaited<ReturnType<ApiServer['asPerson']>>>();
  const as = async (id: DemoPerson) => {
    const person = signedIn.get(id) ?? (await server.asPerson(id));
    signedIn.set(id, person);
    return person;
  };
  const read = async (path: string, by: DemoPerson) =>
    server.send('GET', path, { headers: (await as(by)).headers });
  return { ...server, as, read };
}
type Hospital = Awaited<ReturnType<typeof hospital>>;

const whoMay = (act: Act): DemoPerson => {
  const found = PEOPLE.find(({ role }) => may({ role }, act));
  if (!found) throw new Error(`nobody of the demo may ${act}`);
  return found.id;
};

/** All of a list, by pages of `limit`. */
async function whole({ read }: Hospital, path: string, by: DemoPerson, limit = 200): Promise<Row[]> {
  const rows: Row[] = [];
  let cursor: string | null = null;
  do {
    const more = `limit=${limit}${cursor === null ? '' : `&cursor=${cursor}`}`;
    const answer = await read(`${path}${path.includes('?') ? '&' : '?'}${more}`, by);
    expect([path, answer.status]).toEqual([path, 200]);
    const page = (await answer.json()) as Found;
    expect(page.items.length).toBeLessThanOrEqual(limit);
    expect([path, answer.headers.get('link') !== null]).toEqual([path, page.next !== null]);
    rows.push(...page.items);
    cursor = page.next;
  } while (cursor !== null);
  return rows;
}

/** What a part of an address in brackets is called in the items of its list, where that is not `id`. */
const NAMED: Record<string, string> = {
  '/api/v1/fit/rules/[code]': 'code',
  '/api/v1/ledger/[seq]': 'seq',
  '/api/v1/settings/[key]': 'key',
  '/api/v1/emergency/[id]': 'caseId',
};
const SOME_DAYS = 'from=2025-12-01&until=2026-01-31';
/** Cases of a time in which the demo has some that are over, some of today, and some to come. */
const CASES = '/api/v1/cases?from=2025-12-01&before=2026-03-01';

const EMERGENCY = 'region=ankle&side=left&plan=start_demo-4&by=2026-01-14T12:00:00.000Z';

/** Addresses as they may be asked on this hospital: every bracket filled from the list that tells of such a thing. */
async function filled(here: Hospital, { address, isList }: Read, by: DemoPerson): Promise<string[]> {
  const ids = async (list: string, name = 'id') =>
    (await whole(here, list, by)).map((row) => text(row, name));
  const few = (all: string[]) => all.slice(0, 6);
  switch (address) {
    case '/api/v1/stock/moves':
      return [`${address}?item=${(await ids('/api/v1/stock', 'itemId'))[0]}`];
    case '/api/v1/consignment/reconciliations':
      return (await ids('/api/v1/consignment/owners')).map((id) => `${address}?owner=${id}`);
    case '/api/v1/consignment/reconciliations/[id]': {
      const owners = await ids('/api/v1/consignment/owners');
      const lists = owners.map((id) => ids(`/api/v1/consignment/reconciliations?owner=${id}`));
      return (await Promise.all(lists)).flat().map((id) => address.replace('[id]', id));
    }
    case '/api/v1/cases':
      return [CASES];
    case '/api/v1/plans/[id]': {
      const cases = few(await ids(CASES));
      const plans = await Promise.all(cases.map((id) => ids(`/api/v1/cases/${id}/plans`)));
      return few(plans.flat()).map((id) => address.replace('[id]', id));
    }
    case '/api/v1/loads/[id]/touched': {
      const rejected = (await whole(here, '/api/v1/loads', by)).filter(({ state }) => state === 'rejected');
      return rejected.map((row) => address.replace('[id]', text(row, 'id')));
    }
    case '/api/v1/fit/exceptions/[id]': {
      const rows = await whole(here, '/api/v1/fit/exceptions', by);
      return rows.map(({ exception }) => address.replace('[id]', text(exception as Row, 'id')));
    }
    case '/api/v1/theatre-list/days/[date]':
      return ['2026-01-14', '2026-01-15'].map((day) => address.replace('[date]', day));
    case '/api/v1/trace/search':
      return ['SFL-02', 'plate', '(01)09529999900012(10)X'].map(
        (q) => `${address}?q=${encodeURIComponent(q)}`,
      );
    case '/api/v1/trace/lots': {
      const heaps = (await whole(here, '/api/v1/stock', by)).filter(({ lot }) => lot !== null);
      return few(heaps.map((row) => `${address}?item=${text(row, 'itemId')}&lot=${text(row, 'lot')}`));
    }
    case '/api/v1/trace/reach':
      return [
        `${address}?of=set&id=${(await ids('/api/v1/sets'))[0]}`,
        `${address}?of=item&id=${(await ids('/api/v1/stock', 'itemId'))[0]}`,
        ...few(await ids('/api/v1/loads')).map((id) => `${address}?of=load&id=${id}`),
      ];
    case '/api/v1/trace/sterilisers/[id]':
      return (await ids('/api/v1/sterilisers')).map((id) => `${address.replace('[id]', id)}?${SOME_DAYS}`);
    case '/api/v1/trace/people/[id]':
      return [`${address.replace('[id]', 'person_wren-adeyemi')}?${SOME_DAYS}`];
    case '/api/v1/cases/[id]/use/questions':
      return (await ids(CASES)).slice(0, 30).map((id) => address.replace('[id]', id));
    case '/api/v1/emergency/answer':
      return [address, `${address}?${EMERGENCY}`, `${address}?region=ankle&side=left&plan=unknown`];
    case '/api/v1/emergency/taking': {
      const codes = (await whole(here, '/api/v1/sets', by)).map((row) => text(row, 'code'));
      return codes.slice(0, 2).map((code) => `${address}?${EMERGENCY}&take=${code},NO-SUCH-1`);
    }
    case '/api/v1/fit/pairs': {
      const codesOf = async (kind: string) =>
        (await whole(here, `/api/v1/catalogue/items?kind=${kind}`, by)).map((row) => text(row, 'code'));
      const [plates, screws, sleeves] = await Promise.all(['plate', 'screw', 'drillSleeve'].map(codesOf));
      const pair = (a: string | undefined, b: string | undefined) =>
        `${address}?a=${encodeURIComponent(a ?? '')}&b=${encodeURIComponent(b ?? '')}`;
      return [
        pair(screws?.[0], plates?.[0]),
        `${pair(plates?.[0], screws?.[0])}&use=lag-2`,
        pair(sleeves?.[0], 'bone'),
        pair('limb-left', plates?.[0]),
      ];
    }
    case '/api/v1/people/[id]':
      return few(await ids('/api/v1/people/on-file')).map((id) => address.replace('[id]', id));
  }
  const at = address.indexOf('/[');
  if (at < 0) return [address];
  const list = address.slice(0, at);
  const found = list === '/api/v1/cases' ? await ids(CASES) : await ids(list, NAMED[address] ?? 'id');
  const bracket = /\[\w+\]/;
  return (isList ? found.slice(0, 2) : few(found)).map((id) => address.replace(bracket, id));
}

/** What an address is asked with where it must be asked with something. */
const ASKED_WITH: Record<string, string> = {
  '/api/v1/stock/moves': '?item=item_none',
  '/api/v1/fit/pairs': '?a=none&b=none',
  '/api/v1/consignment/reconciliations': '?owner=lender_none',
  '/api/v1/trace/search': '?q=nothing',
  '/api/v1/trace/lots': '?item=item_none&lot=none',
  '/api/v1/trace/reach': '?of=set&id=set_none',
  '/api/v1/trace/people/[id]': `?${SOME_DAYS}`,
  '/api/v1/trace/sterilisers/[id]': `?${SOME_DAYS}`,
};

test('whatever the screens show is read as described, with its revision, and page by page the same', async () => {
  const here = await hospital();
  await madeBusy(here);
  const [found, paged, wrong]: [Set<string>, Set<string>, string[]] = [new Set(), new Set(), []];
  for (const one of ALL) {
    const by = whoMay(one.act);
    for (const path of await filled(here, one, by)) {
      if (one.isList) {
        const all = await whole(here, path, by);
        if (all.length > 0) found.add(one.address);
        if (new Set(all.map((row) => JSON.stringify(row))).size !== all.length) wrong.push(`${path}: twice`);
        if (all.length > 1) paged.add(one.address);
        const short = all.length > 40 ? Math.ceil(all.length / 8) : all.length > 3 ? 3 : 1;
        expect([path, await whole(here, path, by, short)]).toEqual([path, all]);
        continue;
      }
      const answer = await here.read(path, by);
      if (answer.status === 200) found.add(one.address);
      else wrong.push(`${path}: ${answer.status}`);
      const { revision, version } = (await answer.json()) as Row;
      const seen = revision ?? version;
      const etag = typeof seen === 'number' ? `"${seen}"` : null;
      if (answer.headers.get('etag') !== etag) wrong.push(`${path}: ${answer.headers.get('etag')}`);
    }
  }
  expect(wrong).toEqual([]);
  const none = ALL.map(({ address }) => address).filter((address) => !found.has(address));
  expect(none).toEqual([]);
  // of what is made here there is more than one, so that a cursor was followed in it
  for (const address of MADE_TWICE) expect([address, paged.has(address)]).toEqual([address, true]);
}, 600_000);

test('each role reads what its screens show, and is refused what they do not', async () => {
  const here = await hospital();
  const wrong: string[] = [];
  for (const role of roles.options) {
    const by = PEOPLE.find((one) => one.role === role)?.id as DemoPerson;
    for (const { address, act } of ALL) {
      const path = address.replaceAll(/\[\w+\]/g, 'case_none');
      const { status } = await here.read(`${path}${ASKED_WITH[address] ?? ''}`, by);
      const right = may({ role }, act) ? status === 200 || status === 404 : status === 403;
      if (!right) wrong.push(`${role} ${address}: ${status}`);
    }
  }
  for (const { address } of ALL) {
    const nobody = await here.send('GET', address.replaceAll(/\[\w+\]/g, 'case_none'));
    if (nobody.status !== 401) wrong.push(`nobody ${address}: ${nobody.status}`);
  }
  expect(wrong).toEqual([]);
}, 600_000);

test('what is asked in no way a list can be asked is refused with its name, and so is a cursor of elsewhere', async () => {
  const here = await hospital();
  const by = 'person_wren-adeyemi';
  const { items, next } = (await (await here.read('/api/v1/places?limit=2', by)).json()) as Found;
  expect([items.length, typeof next]).toEqual([2, 'string']);
  for (const path of [
    '/api/v1/places?limit=0',
    '/api/v1/places?limit=201',
    '/api/v1/places?limit=many',
    '/api/v1/places?cursor=nothing',
    `/api/v1/sets?cursor=${next}`,
    `/api/v1/stock?cursor=${Buffer.from('["x"]').toString('base64url')}`,
    '/api/v1/cases?from=yesterday',
    '/api/v1/stock/moves',
    '/api/v1/trace/reach?of=item',
    // what is not known is not passed over, and of two nobody knows which is meant
    '/api/v1/sets?colour=red',
    '/api/v1/places?limit=1&limit=2',
    '/api/v1/trace/reach?of=set&id=set_ben-01&id=set_ben-02',
  ]) {
    const answer = await here.read(path, by);
    const { errors } = (await answer.json()) as { errors: { path: string[] }[] };
    expect([path, answer.status, errors.length > 0]).toEqual([path, 400, true]);
  }
});
