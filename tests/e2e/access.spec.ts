import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ACTIONS, type Action, ENDPOINTS, type Reach, SCREENS } from '@/lib/people/access';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { may } from '@/lib/people/permissions';
import { type Role, role as roles } from '@/lib/people/role';
import { type DemoPerson, PEOPLE } from '@/seed/hospital/people';
import { expect, test } from './harness';
import { sessionCookie } from './harness/act-as';

/**
 * Every screen, endpoint and action of the build, asked by somebody of every role and by nobody. The lists are the
 * build's own: one that is not declared in `lib/people/access.ts` fails here, and so does a declaration without one.
 */

const BUILD = process.env.KITWRIGHT_DIST ?? '.next';
const METHODS = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE'];
const AT_ONCE = 6;

const fromBuild = (path: string) => JSON.parse(readFileSync(join(process.cwd(), BUILD, path), 'utf8'));

function routes(end: '/page' | '/route'): string[] {
  const manifest = fromBuild('app-path-routes-manifest.json') as Record<string, string>;
  return Object.entries(manifest)
    .filter(([entry, route]) => entry.endsWith(end) && !route.startsWith('/_'))
    .map(([, route]) => route)
    .sort();
}

/** The address of a thing there is none of: whoever is let through is told so, and nothing comes to harm. */
const nowhere = (route: string) =>
  route.replace(/\[(?:\.{3})?(\w+)\]/g, (_, place) => (place === 'id' ? 'case_none' : 'none'));

const somebody = (one: Role): DemoPerson => {
  const found = PEOPLE.find(({ role }) => role === one);
  if (!found) throw new Error(`the demo has no ${one}`);
  return found.id;
};

type Answer = { status: number; headers: Headers };

async function ask(address: string, cookie: string | null, init: RequestInit = {}): Promise<Answer> {
  const headers = { ...(init.headers as Record<string, string>), ...(cookie ? { Cookie: cookie } : {}) };
  const answer = await fetch(address, { redirect: 'manual', ...init, headers });
  // the head of the answer says it all
  await answer.body?.cancel();
  return answer;
}

const leadsToSignIn = ({ status, headers }: Answer) =>
  (status === 307 || status === 303) && isSignIn(headers.get('location'));
const isSignIn = (address: string | null) =>
  /^\/sign-in(\?|;|$)/.test(address?.replace(/^http:\/\/[^/]+/, '') ?? '');

/** An action called by script answers 200 and names where to go in a header: what it says in its body is that page. */
const actionLeadsToSignIn = ({ headers }: Answer) => isSignIn(headers.get('x-action-redirect'));

/** Runs all of it, a few at once. */
async function each<T>(all: readonly T[], work: (one: T) => Promise<void>): Promise<void> {
  const waiting = [...all];
  const lane = async () => {
    for (let one = waiting.shift(); one !== undefined; one = waiting.shift()) await work(one);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
}

async function cookies(address: string): Promise<[Role, string][]> {
  const given: [Role, string][] = [];
  for (const one of roles.options) {
    const { name, value } = await sessionCookie(address, somebody(one));
    given.push([one, `${name}=${value}`]);
  }
  return given;
}

test('every screen is declared, and lets in who may and nobody else', async ({ baseURL }) => {
  const site = baseURL ?? '';
  test.setTimeout(180_000);
  const built = routes('/page');
  expect(built.length).toBeGreaterThan(30);
  expect(Object.keys(SCREENS).sort()).toEqual(built);
  const given = await cookies(site);
  const wrong: string[] = [];
  await each(Object.entries(SCREENS) as [string, Reach][], async ([route, reach]) => {
    const address = site + nowhere(route);
    const nobody = await ask(address, null);
    if (reach === 'anybody' ? leadsToSignIn(nobody) && route !== '/first-run' : !leadsToSignIn(nobody))
      wrong.push(`nobody at ${route}: ${nobody.status}`);
    for (const [role, cookie] of given) {
      const answer = await ask(address, cookie);
      const letIn = !leadsToSignIn(answer) && answer.status !== 403 && answer.status < 500;
      const should = reach === 'anybody' || may({ role }, reach);
      if (letIn !== should) wrong.push(`${role} at ${route}: ${answer.status}`);
    }
  });
  expect(wrong).toEqual([]);
});

test('every endpoint is declared with its method, and answers who may and nobody else', async ({
  baseURL,
}) => {
  const site = baseURL ?? '';
  test.setTimeout(120_000);
  const built: string[] = [];
  for (const route of routes('/route')) {
    const { headers } = await ask(site + nowhere(route), null, { method: 'OPTIONS' });
    const allowed = (headers.get('allow') ?? '').split(', ').filter((method) => METHODS.includes(method));
    built.push(...allowed.map((method) => `${method} ${route}`));
  }
  expect(built.length).toBeGreaterThan(30);
  expect(Object.keys(ENDPOINTS).sort()).toEqual(built.sort());
  const given = await cookies(site);
  const wrong: string[] = [];
  await each(Object.entries(ENDPOINTS) as [string, Reach][], async ([key, reach]) => {
    const [method = '', route = ''] = key.split(' ');
    const address = site + nowhere(route);
    const nobody = await ask(address, null, { method });
    // FHIR tells problems in a resource of its own
    const isProblem = /^application\/(problem|fhir)\+json\b/.test(nobody.headers.get('content-type') ?? '');
    if (reach === 'anybody') {
      if ([401, 403].includes(nobody.status) || nobody.status >= 500)
        wrong.push(`nobody ${key}: ${nobody.status}`);
      return; // asking again as somebody would sign them out
    }
    if (nobody.status !== 401 || !isProblem) wrong.push(`nobody ${key}: ${nobody.status}`);
    for (const [role, cookie] of given) {
      const { status } = await ask(address, cookie, { method });
      const letIn = status !== 401 && status !== 403 && status < 500;
      if (letIn !== may({ role }, reach)) wrong.push(`${role} ${key}: ${status}`);
    }
    if (method !== 'GET') {
      const [, cookie = ''] = given.find(([role]) => may({ role }, reach)) ?? [];
      const { status } = await ask(address, cookie, {
        method,
        headers: { Origin: 'http://elsewhere.invalid' },
      });
      if (status !== 403) wrong.push(`from another site ${key}: ${status}`);
    }
  });
  expect(wrong).toEqual([]);
});

test('every action of the build sends nobody to sign in, before it looks at what it was sent', async ({
  baseURL,
}) => {
  const site = baseURL ?? '';
  const path = 'server/server-reference-manifest.json';
  test.skip(!existsSync(join(process.cwd(), BUILD, path)), 'a running server without its build');
  const { node } = fromBuild(path) as { node: Record<string, { workers: Record<string, unknown> }> };
  const actions = Object.entries(node);
  expect(actions.length).toBeGreaterThan(0);
  const { name, value } = await sessionCookie(site, somebody('administrator'));
  const somebodyElse = `${name}=${value}`;
  // the name of its file carries the head of the ledger
  const head = async () => {
    const { headers } = await ask(`${site}/ledger/export`, somebodyElse);
    return /head-(\d+-[0-9a-f]{16})/.exec(headers.get('content-disposition') ?? '')?.[1];
  };
  const before = await head();
  expect(before).toBeDefined();
  const wrong: string[] = [];
  for (const [id, { workers }] of actions) {
    for (const worker of Object.keys(workers)) {
      const route = worker.replace(/^app/, '').replace(/\/page$/, '') || '/';
      // without anything an action needs: whatever it does before it asks who is there fails otherwise
      const send = {
        method: 'POST',
        headers: { 'Next-Action': id, 'Content-Type': 'text/plain' },
        body: '[]',
      };
      const nobody = await ask(site + nowhere(route), null, send);
      if (!actionLeadsToSignIn(nobody)) wrong.push(`nobody, ${id} of ${route}: ${nobody.status}`);
      const forged = await ask(site + nowhere(route), `${name}=${value.slice(0, -1)}`, send);
      if (!actionLeadsToSignIn(forged)) wrong.push(`a forged session, ${id} of ${route}: ${forged.status}`);
      // the same is let through for somebody, so it is the session that is asked for
      const known = await ask(site + nowhere(route), somebodyElse, send);
      if (known.status === 404 || actionLeadsToSignIn(known))
        wrong.push(`somebody, ${id} of ${route}: ${known.status}`);
    }
  }
  expect(wrong).toEqual([]);
  expect(await head(), 'the head of the ledger').toBe(before);
});

/** What each action is sent: right in form, about nothing that is there, so that whoever may is told just that. */
const SENT: Record<Action, { body: () => BodyInit; letThrough: RegExp }> = {
  'app/cases/new/book-case-action.ts bookCaseAction': {
    // as React sends a form to an action: its fields under the number by which the arguments name it
    body: () => {
      const form = new FormData();
      const fields = {
        theatreId: 'theatre_none',
        date: '2031-01-15',
        time: '08:30',
        minutes: '60',
        region: 'ankle',
        limb: 'left',
        surgeonId: 'person_none',
        urgency: 'booked',
        startId: '',
      };
      for (const [name, value] of Object.entries(fields)) form.append(`_1_${name}`, value);
      form.append('0', '[[],"$K1"]');
      return form;
    },
    letThrough: /"path":"theatreId"/,
  },
  ...acts({
    approve: { day: '2031-01-15', proof: { secret: DEMO_PASSWORD }, trialId: 'trial_none' },
    askWithdrawal: { because: 'The maker’s instructions changed.' },
    discard: {},
    keep: {},
    withdraw: { day: '2031-01-15', proof: { secret: DEMO_PASSWORD }, trialId: 'trial_none' },
  }),
  'app/fit/actions.ts draftException': { body: () => '[{}]', letThrough: /"path":"firstItemId"/ },
  'app/fit/actions.ts draftRule': { body: () => '[{},0]', letThrough: /"path":"code"/ },
  'app/fit/try-rule.ts tryRule': { body: () => '[{}]', letThrough: /"path":"code"/ },
};

function acts<Step extends string>(stated: Record<Step, object>) {
  type Name = `app/fit/actions.ts act ${Step}`;
  return Object.fromEntries(
    Object.entries(stated).map(([step, said]) => [
      `app/fit/actions.ts act ${step}`,
      { body: () => JSON.stringify(['rule', 'rule_none', step, said]), letThrough: /there is no such rule/ },
    ]),
  ) as Record<Name, { body: () => BodyInit; letThrough: RegExp }>;
}

const REFUSED = / may not |can’t book a case/;

test('every action of the build is declared, and does its work for who may and for nobody else', async ({
  baseURL,
}) => {
  const site = baseURL ?? '';
  test.setTimeout(120_000);
  const path = 'server/server-reference-manifest.json';
  test.skip(!existsSync(join(process.cwd(), BUILD, path)), 'a running server without its build');
  type Built = { filename: string; exportedName: string; workers: Record<string, unknown> };
  const { node, edge } = fromBuild(path) as Record<'node' | 'edge', Record<string, Built>>;
  expect(edge).toEqual({});
  const built = Object.entries(node).map(([id, one]) => ({
    id,
    ...one,
    name: `${one.filename} ${one.exportedName}`,
  }));
  const declared = Object.keys(ACTIONS) as Action[];
  const own = (name: string) => declared.filter((one) => one === name || one.startsWith(`${name} `));
  expect(built.filter(({ name }) => own(name).length === 0).map(({ name }) => name)).toEqual([]);
  expect([...new Set(built.flatMap(({ name }) => own(name)))].sort()).toEqual([...declared].sort());
  const given = await cookies(site);
  const wrong: string[] = [];
  const calls = built.flatMap(({ id, name, workers }) =>
    own(name).flatMap((action) => given.map(([role, cookie]) => ({ id, action, role, cookie, workers }))),
  );
  await each(calls, async ({ id, action, role, cookie, workers }) => {
    const [worker = ''] = Object.keys(workers);
    const route = worker.replace(/^app/, '').replace(/\/page$/, '') || '/';
    const body = SENT[action].body();
    const headers: Record<string, string> = { 'Next-Action': id, Cookie: cookie };
    if (typeof body === 'string') headers['Content-Type'] = 'text/plain;charset=UTF-8';
    const answer = await fetch(site + nowhere(route), { method: 'POST', redirect: 'manual', headers, body });
    const said = await answer.text();
    const letIn = SENT[action].letThrough.test(said) && !REFUSED.test(said);
    const refused = REFUSED.test(said) && !SENT[action].letThrough.test(said);
    const should = may({ role }, ACTIONS[action]);
    if (answer.status !== 200 || letIn !== should || refused === should)
      wrong.push(`${role}, ${action}: ${answer.status} ${said.slice(0, 300)}`);
  });
  expect(wrong).toEqual([]);
});
