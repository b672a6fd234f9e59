import { ENDPOINTS, type Reach, SCREENS } from '@/lib/people/access';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import { type DemoPerson, PEOPLE } from '@/seed/hospital/people';
import { expect, test } from './harness';
import { sessionCookie } from './harness/act-as';
import { type Hospital, openHospital } from './harness/hospital';
import { rawRequest } from './raw-request';

/** Ways round a guard that have opened doors elsewhere, each tried at every door. */

let hospital: Hospital | null = null;

// thousands of questions by one address within a minute or two are no hospital: its own limits would answer most of them
test.beforeAll(async () => {
  if (!process.env.BASE_URL) hospital = await openHospital('bypass', { KITWRIGHT_RATE: '100' });
});
test.afterAll(async () => {
  await hospital?.close();
});

function address(): string {
  test.skip(hospital === null, 'a server of its own');
  test.setTimeout(420_000);
  return hospital?.address ?? '';
}

const nowhere = (route: string) =>
  route.replace(/\[(\w+)\]/g, (_, place) => (place === 'id' ? 'case_none' : 'none'));
const encoded = (path: string) =>
  path.replace(/^\/(.)/, (_, first: string) => `/%${first.charCodeAt(0).toString(16)}`);
const AT_ONCE = 6;

async function each<T>(all: readonly T[], work: (one: T) => Promise<void>): Promise<void> {
  const waiting = [...all];
  const lane = async () => {
    for (let one = waiting.shift(); one !== undefined; one = waiting.shift()) await work(one);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
}

/** Another spelling of the same address. */
const SPELLINGS: [string, (path: string) => string][] = [
  ['as it is', (path) => path],
  ['with a slash at its end', (path) => `${path}/`],
  ['encoded', encoded],
  ['with two slashes', (path) => `/${path}`],
  ['by a detour', (path) => `/health/live/../..${path}`],
  ['by an encoded detour', (path) => `/health/live/%2e%2e/%2e%2e${path}`],
  ['in capitals', (path) => path.toUpperCase()],
  ['with a null', (path) => `${path}%00`],
];

/** What a request says of itself. `x-middleware-subrequest` once made this framework pass its guards by. */
const CLAIMS: [string, Record<string, string>][] = [
  ['nothing', {}],
  ['a part of a page', { RSC: '1' }],
  ['fetched ahead', { RSC: '1', 'Next-Router-Prefetch': '1', Purpose: 'prefetch' }],
  ['the framework itself', { 'x-middleware-subrequest': 'proxy:proxy:proxy:proxy:proxy' }],
  [
    'from this machine',
    { 'X-Forwarded-For': '127.0.0.1', 'X-Real-IP': '127.0.0.1', Forwarded: 'for=127.0.0.1' },
  ],
  ['another address', { 'X-Original-URL': '/health/live', 'X-Rewrite-URL': '/health/live' }],
  ['a token of nobody', { Authorization: 'Bearer none', Cookie: '__Host-session=none' }],
];

const isClosed = (status: number, body: string) =>
  [307, 303, 308, 400, 401, 403, 404, 405].includes(status) ||
  // a part of a page says where to go instead in its body
  (status === 200 && body.includes('NEXT_REDIRECT;') && body.includes('/sign-in'));

test('no spelling of an address and no claim of a request opens a screen or an endpoint to nobody', async () => {
  const site = address();
  const doors = [
    ...(Object.entries(SCREENS) as [string, Reach][]).map(([route, reach]) => ({
      method: 'GET',
      route,
      reach,
    })),
    ...(Object.entries(ENDPOINTS) as [string, Reach][]).map(([key, reach]) => {
      const [method = '', route = ''] = key.split(' ');
      return { method, route, reach };
    }),
  ].filter(({ reach }) => reach !== 'anybody');
  expect(doors.length).toBeGreaterThan(200);
  const tries = doors.flatMap((door) => [
    ...SPELLINGS.map(([how, spelled]) => ({ door, how, path: spelled(nowhere(door.route)), headers: {} })),
    ...CLAIMS.map(([how, headers]) => ({ door, how, path: nowhere(door.route), headers })),
  ]);
  const wrong: string[] = [];
  await each(tries, async ({ door: { method, route }, how, path, headers }) => {
    const alsoHead = method === 'GET' && (how === 'as it is' || how === 'encoded');
    for (const by of alsoHead ? ['GET', 'HEAD'] : [method]) {
      const { status, body } = await rawRequest(site, path, { method: by, headers });
      if (!isClosed(status, body)) wrong.push(`${by} ${route} ${how}: ${status}`);
    }
  });
  expect(wrong).toEqual([]);
});

const ELSEWHERE = (site: URL): [string, Record<string, string>][] => [
  ['another site', { Origin: 'http://elsewhere.invalid' }],
  ['a sandboxed frame', { Origin: 'null' }],
  ['another port', { Origin: `${site.protocol}//${site.hostname}:1` }],
  ['a sub-domain', { Origin: `${site.protocol}//sub.${site.host}` }],
  ['a name that begins alike', { Origin: `${site.origin}.invalid` }],
  ['a cross-site page without an origin', { 'Sec-Fetch-Site': 'cross-site' }],
  ['a neighbour without an origin', { 'Sec-Fetch-Site': 'same-site' }],
  [
    'another site that claims ours by a proxy',
    { Origin: 'http://elsewhere.invalid', 'X-Forwarded-Host': 'elsewhere.invalid' },
  ],
];

const of = (role: Role): DemoPerson => {
  const found = PEOPLE.find((one) => one.role === role);
  if (!found) throw new Error(`the demo has no ${role}`);
  return found.id;
};

test('no write is taken from a page of another site, whoever’s cookie comes with it, by any method that is claimed', async () => {
  const site = new URL(address());
  const { name, value } = await sessionCookie(site.origin, of('administrator'));
  const Cookie = `${name}=${value}`;
  const writes = Object.keys(ENDPOINTS).flatMap((key) => {
    const [method = '', route = ''] = key.split(' ');
    return method === 'GET' ? [] : [{ method, route }];
  });
  const wrong: string[] = [];
  await each(writes, async ({ method, route }) => {
    for (const [from, headers] of ELSEWHERE(site)) {
      const claimed: Record<string, string>[] = [
        {},
        { 'X-HTTP-Method-Override': 'GET', 'X-HTTP-Method': 'GET' },
      ];
      for (const override of claimed) {
        const { status } = await rawRequest(site.origin, nowhere(route), {
          method,
          headers: { Cookie, 'Content-Type': 'text/plain', ...headers, ...override },
          body: '{}',
        });
        if (status !== 403) wrong.push(`${method} ${route} from ${from}: ${status}`);
      }
    }
    // read, and said to be meant as a write
    const disguised = await rawRequest(site.origin, `${nowhere(route)}?_method=${method}`, {
      headers: {
        Cookie,
        'X-HTTP-Method-Override': method,
        'X-Method-Override': method,
        Origin: 'http://elsewhere.invalid',
      },
    });
    const isRead = `GET ${route}` in ENDPOINTS;
    if (!isRead && disguised.status !== 405 && disguised.status !== 404)
      wrong.push(`GET ${route} as ${method}: ${disguised.status}`);
  });
  // every action of the build is a POST to a page
  for (const [from, headers] of ELSEWHERE(site)) {
    for (const route of ['/', '/fit/rules/new', '/cases/new', '/sign-in', '/nothing']) {
      const { status } = await rawRequest(site.origin, route, {
        method: 'POST',
        headers: { Cookie, 'Next-Action': 'f'.repeat(42), 'Content-Type': 'text/plain', ...headers },
        body: '[]',
      });
      if (status !== 403) wrong.push(`an action at ${route} from ${from}: ${status}`);
    }
  }
  expect(wrong).toEqual([]);
});

test('who may not is told so by every spelling that reaches the endpoint, and by HEAD', async () => {
  const site = address();
  const { name, value } = await sessionCookie(site, of('technician'));
  const Cookie = `${name}=${value}`;
  const closed = (Object.entries(ENDPOINTS) as [string, Reach][]).filter(
    ([, reach]) => reach !== 'anybody' && !may({ role: 'technician' }, reach),
  );
  expect(closed.length).toBeGreaterThan(30);
  const wrong: string[] = [];
  await each(closed, async ([key]) => {
    const [method = '', route = ''] = key.split(' ');
    for (const [how, spelled] of SPELLINGS) {
      for (const by of method === 'GET' ? ['GET', 'HEAD'] : [method]) {
        const { status } = await rawRequest(site, spelled(nowhere(route)), {
          method: by,
          headers: { Cookie },
        });
        if (![403, 404, 405, 308, 400].includes(status)) wrong.push(`${by} ${route} ${how}: ${status}`);
        if (how === 'as it is' && status !== 403) wrong.push(`${by} ${route}: ${status}`);
      }
    }
  });
  expect(wrong).toEqual([]);
});
