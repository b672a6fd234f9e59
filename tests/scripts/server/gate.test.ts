import { AsyncLocalStorage } from 'node:async_hooks';
import { once } from 'node:events';
import { Agent, createServer, type IncomingHttpHeaders, request } from 'node:http';
import { type AddressInfo, connect } from 'node:net';
import pino from 'pino';
import { expect, onTestFinished, test } from 'vitest';
import { type Gate, takeRequests } from '../../../scripts/server/gate.mjs';
import { methodsOf } from '../../../scripts/server/methods.mjs';
import { stopInOrder } from '../../../scripts/server/stop.mjs';

type Answer = Parameters<Gate['answer']>;

/** A server behind the gate whose application is `answer`. */
async function open(answer: (...asked: Answer) => unknown, changes: Partial<Gate> = {}) {
  const lines: Record<string, unknown>[] = [];
  const log = pino({ level: 'debug' }, { write: (line: string) => lines.push(JSON.parse(line)) });
  const answered: { method: string; route: string; status: number }[] = [];
  const server = createServer({ requireHostHeader: false });
  let exited: number | null = null;
  const stop = stopInOrder(server, {
    log,
    close: async () => {},
    exit: (code) => {
      exited = code;
    },
  });
  takeRequests(server, {
    answer: async (...asked) => answer(...asked),
    requests: new AsyncLocalStorage(),
    patternOf: (path) => (path === '/paper' ? '/x/paper' : path),
    methodsOf: methodsOf('app/api-docs/openapi.json'),
    stopping: stop.isStopping,
    log,
    metrics: { begun() {}, limited() {}, answered: (one) => answered.push(one) },
    buildId: 'build-7',
    behindProxy: false,
    tls: false,
    times: 1,
    ...changes,
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  onTestFinished(() => {
    for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) process.removeAllListeners(signal);
    server.closeAllConnections();
    server.close();
  });
  return { port, server, lines, answered, exited: () => exited };
}

interface Got {
  status: number;
  headers: IncomingHttpHeaders;
  body: string;
}

function ask(
  port: number,
  path: string,
  init: { method?: string; headers?: Record<string, string>; agent?: Agent } = {},
) {
  return new Promise<Got>((resolve, reject) => {
    const { method = 'GET', headers = {}, agent } = init;
    const asking = request({ port, path, method, headers, host: '127.0.0.1', agent }, async (answer) => {
      let body = '';
      for await (const part of answer) body += part;
      resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body });
    });
    asking.on('error', reject);
    asking.end();
  });
}

const hello: (...asked: Answer) => void = (_request, response) => {
  response.setHeader('Content-Type', 'text/html; charset=utf-8');
  response.end('<p>hello</p>');
};

test('an answer has its headers however it was written, and the nonce the application was given is its own', async () => {
  const seen: (string | undefined)[] = [];
  const ways: Record<string, (...asked: Answer) => void> = {
    '/set': hello,
    '/head': (_request, response) => {
      response.writeHead(200, 'OK', { 'content-type': 'text/html' });
      response.end();
    },
    '/pairs': (_request, response) => {
      response.writeHead(200, ['content-type', 'text/html']);
      response.end();
    },
    '/own': (_request, response) => {
      response.setHeader('Content-Security-Policy', 'default-src *');
      hello(_request, response);
    },
  };
  const { port } = await open((asked, response) => {
    seen.push(String(asked.headers['content-security-policy']));
    return ways[asked.url ?? '']?.(asked, response);
  });
  for (const way of Object.keys(ways)) {
    const { headers, status } = await ask(port, way, {
      headers: { 'Content-Security-Policy': "script-src 'nonce-MINE'" },
    });
    expect(status).toBe(200);
    expect(headers['content-security-policy']).toBe(seen.at(-1));
    expect(headers['content-security-policy']).toMatch(/'nonce-[\w+/=]{24}'/);
    expect(headers['content-security-policy']).not.toContain('MINE');
    expect(headers['x-request-id']).toMatch(/^[0-9a-f-]{36}$/);
    expect(headers['x-kitwright-build']).toBe('build-7');
    expect(headers['x-content-type-options']).toBe('nosniff');
  }
  expect(new Set(seen).size).toBe(seen.length);
});

test('one line is logged for each request: its pattern, never its query, its headers or what it brought', async () => {
  const { port, lines, answered } = await open(hello);
  const { headers } = await ask(port, '/sets?q=SECRET-QUERY', {
    headers: { Cookie: '__Host-session=SECRET-COOKIE', Authorization: 'Bearer SECRET-TOKEN' },
  });
  await expect.poll(() => lines.length).toBe(1);
  expect(lines[0]).toMatchObject({
    msg: 'request',
    method: 'GET',
    route: '/sets',
    status: 200,
    person: null,
  });
  expect(lines[0]?.request).toBe(headers['x-request-id']);
  expect(JSON.stringify([lines, answered])).not.toContain('SECRET');
  expect(answered).toEqual([{ method: 'GET', route: '/sets', status: 200, seconds: expect.any(Number) }]);
});

test('a fault of the application is answered, logged with its stack, and tells the reader nothing', async () => {
  const { port, lines } = await open(() => {
    throw new Error('SECRET-FAULT');
  });
  const { status, body, headers } = await ask(port, '/sets');
  expect(status).toBe(500);
  expect(body).toBe('');
  expect(headers['content-security-policy']).toContain("default-src 'none'");
  expect(lines.find(({ msg }) => msg === 'not answered')).toMatchObject({ err: { message: 'SECRET-FAULT' } });
});

test('refusals before the application: in words, as problems, and with the headers of every answer', async () => {
  let asked = 0;
  const { port } = await open((...args) => {
    asked += 1;
    return hello(...args);
  });
  const elsewhere = await ask(port, '/sets', {
    method: 'POST',
    headers: { Origin: 'https://elsewhere.invalid' },
  });
  expect(elsewhere.status).toBe(403);
  expect(JSON.parse(elsewhere.body)).toMatchObject({
    status: 403,
    title: 'Not permitted',
    type: 'about:blank',
  });
  const large = await ask(port, '/sets', { method: 'POST', headers: { 'Content-Length': '9000000' } }).catch(
    (error: Error) => error,
  );
  expect(large).toMatchObject({ status: 413 });
  const trace = await ask(port, '/sets', { method: 'TRACE' });
  expect(trace.status).toBe(405);
  expect(asked).toBe(0);
  for (const { headers } of [elsewhere, trace]) {
    expect(headers['content-type']).toBe('application/problem+json');
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(headers['cache-control']).toBe('no-store');
  }
});

test('an address whose percent signs say nothing is refused as such, before the framework fails at it', async () => {
  const { port } = await open(() => {
    throw new Error('it was asked');
  });
  for (const path of ['/api/v1/places/%zz', '/api/v1/places/%ff', '/sets/%', '/%E0%A4%A']) {
    const { status, headers, body } = await ask(port, path);
    expect([path, status, headers['content-type']]).toEqual([path, 400, 'application/problem+json']);
    expect(JSON.parse(body)).toMatchObject({ status: 400, errors: [{ code: 'no-address' }] });
  }
});

test('an address of the API asked by another method: 405 in words, with those it is asked by', async () => {
  const { port } = await open(hello);
  const answer = await ask(port, '/api/v1/places', { method: 'PATCH' });
  expect([answer.status, answer.headers.allow]).toEqual([405, 'GET, POST, HEAD, OPTIONS']);
  expect(answer.headers['content-type']).toBe('application/problem+json');
  expect(JSON.parse(answer.body)).toMatchObject({ status: 405, errors: [{ code: 'no-such-method' }] });
  const trace = await ask(port, '/api/v1/places', { method: 'TRACE' });
  expect([trace.status, trace.headers.allow]).toEqual([405, 'GET, POST, HEAD, OPTIONS']);
  expect((await ask(port, '/api/v1/places', { method: 'HEAD' })).status).toBe(200);
  // what the description does not speak of is the framework's to answer
  expect((await ask(port, '/api/v1/nothing', { method: 'PATCH' })).status).toBe(200);
});

test('asked for too often: 429, with how long to wait, as a sentence where somebody reads it', async () => {
  const { port } = await open(hello);
  const cookie = { Cookie: '__Host-session=one' };
  const statuses: number[] = [];
  for (let at = 0; at < 160; at += 1) statuses.push((await ask(port, '/paper', { headers: cookie })).status);
  expect(statuses.slice(0, 150)).toEqual(Array.from({ length: 150 }, () => 200));
  expect(statuses.at(-1)).toBe(429);
  const read = await ask(port, '/paper', { headers: { ...cookie, Accept: 'text/html' } });
  expect(read.headers['content-type']).toContain('text/plain');
  expect(read.body).toMatch(/^Asked for too often\. .* Try again in \d+ seconds?\.\n$/);
  const problem = await ask(port, '/paper', { headers: cookie });
  expect(JSON.parse(problem.body).waitSeconds).toBe(Number(problem.headers['retry-after']));
  expect(Number(problem.headers['retry-after'])).toBeGreaterThanOrEqual(1);
  // neither another person at the same address nor another kind of work is hindered
  expect((await ask(port, '/paper', { headers: { Cookie: '__Host-session=two' } })).status).toBe(200);
  expect((await ask(port, '/api/v1/scans', { method: 'POST', headers: cookie })).status).toBe(200);
});

test('what is no HTTP gets a plain 400 with the same headers', async () => {
  const { port } = await open(hello);
  const socket = connect(port, '127.0.0.1');
  socket.write('NOT HTTP AT ALL\r\n\r\n');
  let text = '';
  for await (const part of socket) text += part;
  expect(text).toMatch(/^HTTP\/1\.1 400 Bad Request\r\n/);
  expect(text).toContain("Content-Security-Policy: default-src 'none'");
});

test('stopping: what was begun is answered, idle connections go, new work is refused in words', async () => {
  let release: (() => void) | null = null;
  const { port, exited, lines } = await open(async (asked, response) => {
    if (asked.url === '/slow')
      await new Promise<void>((resolve) => {
        release = resolve;
      });
    hello(asked, response);
  });
  const kept = new Agent({ keepAlive: true });
  const other = new Agent({ keepAlive: true });
  onTestFinished(() => {
    kept.destroy();
    other.destroy();
  });
  await ask(port, '/quick', { agent: other });
  const slow = ask(port, '/slow', { agent: kept });
  await expect.poll(() => release).not.toBeNull();
  process.emit('SIGTERM');
  const late = await ask(port, '/quick');
  expect(late.status).toBe(503);
  expect(late.headers).toMatchObject({ connection: 'close', 'retry-after': '5' });
  expect(JSON.parse(late.body).detail).toContain('nothing was changed');
  expect(exited()).toBeNull();
  (release as unknown as () => void)();
  const done = await slow;
  expect(done).toMatchObject({ status: 200, body: '<p>hello</p>' });
  expect(done.headers.connection).toBe('close');
  await expect.poll(exited).toBe(0);
  await expect(ask(port, '/quick')).rejects.toThrow(/ECONNREFUSED/);
  expect(lines.find(({ msg }) => msg === 'stopped')).toMatchObject({ cutOff: 0 });
});

test('stopping: what does not end is cut off after three seconds, and the log says so', async () => {
  let asked = 0;
  const { port, exited, lines } = await open(() => {
    asked += 1;
    return new Promise(() => {});
  });
  const hung = ask(port, '/never').catch((error: Error) => error);
  await expect.poll(() => asked, { timeout: 8000 }).toBe(1);
  const began = performance.now();
  process.emit('SIGTERM');
  await expect.poll(exited, { timeout: 8000 }).toBe(0);
  expect(performance.now() - began).toBeLessThan(5000);
  expect(await hung).toBeInstanceOf(Error);
  expect(lines.find(({ msg }) => msg === 'stopped')).toMatchObject({ cutOff: 1 });
});

/** What is answered to these very bytes. */
async function answerTo(port: number, sent: string): Promise<string> {
  const socket = connect(port, '127.0.0.1');
  socket.end(sent);
  let answer = '';
  for await (const part of socket) answer += part;
  return answer;
}

test('an address is the one it is limited and logged by: dots that lead elsewhere are refused in every spelling', async () => {
  const seen: string[] = [];
  const { port, answered } = await open((asked, response) => {
    seen.push(`${asked.headers.host} ${asked.url}`);
    hello(asked, response);
  });
  // as a browser would read them, each is POST /api/v1/people/sign-in (WHATWG URL, 4.4: dot segments)
  const elsewhere = ['..', '%2e%2e', '.%2E', '%2e.'].flatMap((up) => [
    `/_next/static/${up}/${up}/api/v1/people/sign-in`,
    `/_next/static/x\\${up}\\..\\..\\api/v1/people/sign-in`,
    `http://127.0.0.1/_next/static/${up}/${up}/api/v1/people/sign-in`,
  ]);
  for (const target of [...elsewhere, '/./api/v1/people/sign-in', '*']) {
    const answer = await answerTo(
      port,
      `POST ${target} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n`,
    );
    expect(answer, target).toMatch(/^HTTP\/1\.1 400 .*"not-an-address"/s);
    expect(answer, target).toMatch(/content-security-policy: default-src 'none'/i);
  }
  expect(seen).toEqual([]);
  expect(new Set(answered.map(({ route }) => route))).toEqual(new Set(['']));
  // dots that lead nowhere, and a whole address (RFC 9112, 3.2.2), whose host counts
  for (const [target, taken] of [
    ['/sets/..a/.b?from=/../x', 'other.example /sets/..a/.b?from=/../x'],
    ['http://kit.example:81/sets?q=1', 'kit.example:81 /sets?q=1'],
    ['HTTP://kit.example', 'kit.example /'],
    ['http://kit.example?q', 'kit.example /?q'],
  ]) {
    const answer = await answerTo(
      port,
      `GET ${target} HTTP/1.1\r\nHost: other.example\r\nConnection: close\r\n\r\n`,
    );
    expect(answer).toMatch(/^HTTP\/1\.1 200 /);
    expect(seen.pop()).toBe(taken);
  }
});

test('a request that says no host, or expects what nobody knows, is answered in words and with the headers of all', async () => {
  const { port } = await open(hello);
  const noHost = await answerTo(port, 'GET /sets HTTP/1.1\r\nConnection: close\r\n\r\n');
  expect(noHost).toMatch(/^HTTP\/1\.1 400 .*"not-an-address"/s);
  // what asks for health by HTTP/1.0 need not say one
  expect(await answerTo(port, 'GET /sets HTTP/1.0\r\n\r\n')).toMatch(/^HTTP\/1\.1 200 /);
  const expecting = 'GET /sets HTTP/1.1\r\nHost: x\r\nExpect: banana\r\nConnection: close\r\n\r\n';
  for (const answer of [noHost, await answerTo(port, expecting)]) {
    expect(answer).toMatch(/x-request-id: [0-9a-f-]{36}/i);
    expect(answer).toMatch(/content-security-policy: default-src 'none'/i);
  }
  expect(await answerTo(port, expecting)).toMatch(/^HTTP\/1\.1 417 .*"not-expected"/s);
});
