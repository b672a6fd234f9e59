import { connect } from 'node:net';
import { ENDPOINTS, SCREENS } from '@/lib/people/access';
import { expect, test } from './harness';
import { sessionCookie } from './harness/act-as';
import { rawRequest } from './raw-request';

/** Headers of every kind of answer, asked of the built server (OWASP ASVS 5.0, chapter 3.4, from memory of its headings). */
const EVERY = {
  'x-content-type-options': /^nosniff$/,
  'referrer-policy': /^same-origin$/,
  'cross-origin-opener-policy': /^same-origin$/,
  'cross-origin-resource-policy': /^same-origin$/,
  'permissions-policy': /^camera=\((self)?\), .*microphone=\(\)/,
  'content-security-policy': /^default-src 'none'; .*frame-ancestors 'none'/,
  'x-request-id': /^[0-9a-f-]{36}$/,
};
const PAGE = /text\/html/;

test('every kind of answer has its headers, and every page a nonce of its own that all its scripts carry', async ({
  baseURL,
  hospital,
}) => {
  test.skip(hospital === null, 'a server of its own');
  test.setTimeout(180_000);
  const site = baseURL ?? '';
  const { name, value } = await sessionCookie(site, 'person_edda-winslow');
  const cookie = `${name}=${value}`;
  const there = (route: string) =>
    route.replace(/\[(\w+)\]/g, (_, place) => (place === 'id' ? 'set_sfl-02' : 'none'));
  const reads = Object.keys(ENDPOINTS).flatMap((key) => (key.startsWith('GET ') ? [key.slice(4)] : []));
  type Init = { method?: string; headers?: Record<string, string>; body?: string };
  const asked: [string, Init][] = [
    ...Object.keys(SCREENS).map((route): [string, Init] => [there(route), {}]),
    ...reads.map((route): [string, Init] => [there(route), {}]),
    ['/sets', { headers: { RSC: '1' } }],
    ['/sets', { method: 'HEAD' }],
    ['/sets', { method: 'OPTIONS' }],
    ['/sets/', {}],
    ['/nothing/here', {}],
    ['/nothing.js', {}],
    ['/_next/static/none.js', {}],
    ['/%2e%2e/%2e%2e/etc/passwd', {}],
    ['/%zz', {}],
    ['/favicon.ico', {}],
    ['/api/v1/nothing', {}],
    ['/api/v1/scans', { method: 'POST', body: '{' }],
    ['/api/v1/scans', { method: 'POST', headers: { Origin: 'null' } }],
    ['/api/v1/people', { method: 'PATCH' }],
  ];
  const wrong: string[] = [];
  const nonces = new Set<string>();
  const kinds = new Set<string>();
  let pages = 0;
  const files = new Set<string>();
  for (const [path, init] of asked) {
    const answer = await rawRequest(site, path, { ...init, headers: { ...init.headers, Cookie: cookie } });
    const told = (header: string) => String(answer.headers[header] ?? '');
    const what = `${init.method ?? 'GET'} ${path} ${answer.status}`;
    const type = told('content-type');
    kinds.add(type.split(';')[0] ?? '');
    for (const [header, right] of Object.entries(EVERY))
      if (!right.test(told(header))) wrong.push(`${what}: ${header}`);
    const policy = told('content-security-policy');
    if (told('x-powered-by') !== '' || told('server') !== '') wrong.push(`${what}: says what it runs`);
    if (policy.includes('unsafe') && path !== '/scan/reader.js') wrong.push(`${what}: ${policy}`);
    const { body } = answer;
    if (!PAGE.test(type)) continue;
    pages += 1;
    const nonce = /'nonce-([^']+)'/.exec(policy)?.[1] ?? '';
    if (nonce === '' || nonces.has(nonce)) wrong.push(`${what}: its nonce is not its own`);
    nonces.add(nonce);
    for (const [tag] of body.matchAll(/<script\b[^>]*>/g))
      if (!tag.includes(`nonce="${nonce}"`)) wrong.push(`${what}: ${tag.slice(0, 120)}`);
    const markup = body.replaceAll(/<script\b[\s\S]*?<\/script>/g, '');
    for (const [tag] of markup.matchAll(/<[a-z][^<>]*\s(style|on[a-z]+)="[^<>]*>/g))
      wrong.push(`${what}: ${tag.slice(0, 160)}`);
    for (const [, file] of body.matchAll(/"(\/_next\/static\/[^"?\\]+)/g)) if (file) files.add(file);
  }
  expect(wrong).toEqual([]);
  expect(pages).toBeGreaterThan(80);
  for (const kind of [
    'application/pdf',
    'application/json',
    'application/problem+json',
    'text/css',
    'text/csv',
  ])
    expect([...kinds]).toContain(kind);
  expect(files.size).toBeGreaterThan(10);
  for (const file of files) {
    const answer = await fetch(site + file);
    expect(answer.headers.get('content-security-policy'), file).toMatch(/^default-src 'none'/);
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    await answer.body?.cancel();
  }
});

const METHODS = ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'TRACE'] as const;

test('a method that an address of the API has not is refused with those it has', async ({ baseURL }) => {
  const site = baseURL ?? '';
  const wrong: string[] = [];
  const has = new Map<string, Set<string>>();
  for (const [method = '', route = ''] of Object.keys(ENDPOINTS).map((key) => key.split(' ')))
    if (route.startsWith('/api/v1/') && !route.includes('[...'))
      has.set(route, (has.get(route) ?? new Set(['OPTIONS'])).add(method));
  expect(has.size).toBeGreaterThan(200);
  for (const [at, [route, methods]] of [...has].entries()) {
    if (methods.has('GET')) methods.add('HEAD');
    const others = METHODS.filter((method) => !methods.has(method));
    // one of them at each address: all together are more than one place may ask in a minute
    const method = others[at % others.length] ?? 'TRACE';
    const path = route.replaceAll(/\[\w+\]/g, 'none');
    const { status, headers, body } = await rawRequest(site, path, { method });
    const what = `${method} ${path}: ${status}`;
    if (status !== 405 || headers['content-type'] !== 'application/problem+json')
      wrong.push(`${what} ${headers['content-type']}`);
    const allowed = (headers.allow ?? '').split(', ').sort();
    if (allowed.join() !== [...methods].sort().join()) wrong.push(`${what} allows ${headers.allow}`);
    const { status: said } = (body === '' ? { status } : JSON.parse(body)) as { status: number };
    if (said !== 405 || (body === '') !== (method === 'HEAD')) wrong.push(`${what} says ${body}`);
  }
  expect(wrong).toEqual([]);
});

test('an address whose percent signs say nothing is answered as a problem', async ({ baseURL }) => {
  for (const path of ['/api/v1/places/%ff', '/api/v1/sets/%zz/open', '/sets/%']) {
    const { status, headers } = await rawRequest(baseURL ?? '', path);
    expect([path, status, headers['content-type']]).toEqual([path, 400, 'application/problem+json']);
  }
});

test('what is no HTTP is answered plainly, and the server goes on', async ({ baseURL, hospital }) => {
  test.skip(hospital === null, 'a server of its own');
  const { hostname, port } = new URL(baseURL ?? '');
  const socket = connect(Number(port), hostname);
  socket.write('GET / HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n');
  let said = '';
  for await (const part of socket) said += part;
  expect(said).toMatch(/^HTTP\/1\.1 400 /);
  expect((await fetch(`${baseURL}/health/live`)).status).toBe(200);
});
