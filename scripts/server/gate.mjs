import { randomUUID } from 'node:crypto';
import { addressOf, personOf, takeOutClaims } from './asker.mjs';
import { answerHeaders, newNonce, pagePolicy } from './headers.mjs';
import { kindOf, rateLimits } from './limits.mjs';
import { isFromElsewhere, isKnownMethod } from './origin.mjs';
import { STATIC } from './patterns.mjs';
import {
  FROM_ELSEWHERE,
  NO_ADDRESS,
  NO_SUCH_METHOD,
  NOT_AN_ADDRESS,
  NOT_EXPECTED,
  notAsked,
  refuse,
  STOPPING,
  tooLarge,
  tooOften,
} from './refusals.mjs';
import { pathOf, takeTarget } from './target.mjs';

/** No list or picture of ours is larger; each address has a lower bound of its own. */
const MOST_BYTES = 8_000_000;

/**
 * @typedef {{
 *   answer(request: import('node:http').IncomingMessage, response: import('node:http').ServerResponse): Promise<unknown>,
 *   requests: import('node:async_hooks').AsyncLocalStorage<{ id: string, person: string | null }>,
 *   patternOf(path: string): string,
 *   methodsOf(route: string): readonly string[] | null,
 *   stopping(): boolean,
 *   log: import('pino').Logger,
 *   metrics: { begun(): void, limited(kind: string): void, answered(answer: { method: string, route: string, status: number, seconds: number }): void },
 *   buildId: string,
 *   behindProxy: boolean,
 *   tls: boolean,
 *   times: number,
 * }} Gate
 */

/**
 * What every request passes before the application answers it, and every answer on its way out: headers, limits, where it
 * came from, one line of the log, one figure.
 * @param {import('node:http').Server} server
 * @param {Gate} gate
 */
export function takeRequests(server, gate) {
  const limits = rateLimits({ now: () => performance.now(), times: gate.times });
  /** @param {import('node:http').IncomingMessage} request @param {import('node:http').ServerResponse} response */
  const take = (request, response, isExpected = true) => {
    const began = performance.now();
    const method = request.method ?? '';
    const isAddress = takeTarget(request);
    const path = isAddress ? pathOf(request.url) : '';
    const route = gate.patternOf(path);
    const about = { id: randomUUID(), person: null };
    const nonce = newNonce();
    takeOutClaims(request, gate.behindProxy);
    dress(response, { path, nonce, id: about.id, gate });
    gate.metrics.begun();
    response.on('close', () => {
      const ms = performance.now() - began;
      // cut off before its end by whoever asked
      const status = response.writableFinished ? response.statusCode : 499;
      gate.metrics.answered({ method, route, status, seconds: ms / 1000 });
      const level = route === STATIC ? 'debug' : status >= 500 ? 'error' : 'info';
      const { id, person } = about;
      gate.log[level](
        {
          request: id,
          method: isKnownMethod(method) ? method : 'other',
          route,
          status,
          ms: Math.round(ms),
          person,
        },
        'request',
      );
    });

    const refusal = isAddress
      ? isExpected
        ? refusalFor(request, { route, limits, gate })
        : NOT_EXPECTED
      : NOT_AN_ADDRESS;
    if (refusal) {
      // what was sent with it is not read; a connection that still sends is of no more use
      if (refusal.status === 413 || refusal.status === 503) response.setHeader('Connection', 'close');
      refuse(request, response, refusal);
      request.resume();
      return;
    }
    // the framework reads the nonce of its own scripts from here
    request.headers['content-security-policy'] = pagePolicy(nonce);
    gate.requests.run(about, async () => {
      try {
        await gate.answer(request, response);
      } catch (error) {
        gate.log.error({ err: error, request: about.id, route }, 'not answered');
        if (!response.headersSent) response.writeHead(500, { 'Content-Type': 'text/plain; charset=utf-8' });
        response.end();
      }
    });
  };
  server.on('request', (request, response) => take(request, response));
  server.on('checkExpectation', (request, response) => take(request, response, false));
  // what is no HTTP at all gets a plain answer with the same headers, and its connection is closed
  server.on('clientError', (_error, socket) => {
    if (!socket.writable) return;
    const headers = answerHeaders({ path: '', contentType: '', nonce: '', tls: gate.tls });
    const lines = Object.entries({ ...headers, Connection: 'close', 'Content-Length': '0' });
    socket.end(
      `HTTP/1.1 400 Bad Request\r\n${lines.map(([name, value]) => `${name}: ${value}\r\n`).join('')}\r\n`,
    );
  });
}

/** Whether what is written with percent signs in an address says something: the framework fails at what does not. @param {string} path */
function isReadable(path) {
  try {
    decodeURIComponent(path);
    return true;
  } catch {
    return false;
  }
}

/**
 * @param {import('node:http').IncomingMessage} request
 * @param {{ route: string, limits: ReturnType<typeof rateLimits>, gate: Gate }} at
 */
function refusalFor(request, { route, limits, gate }) {
  const { method, headers } = request;
  if (!isKnownMethod(method)) {
    const methods = gate.methodsOf(route);
    return methods === null ? NO_SUCH_METHOD : notAsked(methods);
  }
  if (gate.stopping()) return STOPPING;
  if (!isReadable(pathOf(request.url))) return NO_ADDRESS;
  const host = (gate.behindProxy ? headers['x-forwarded-host']?.toString() : undefined) ?? headers.host;
  if (isFromElsewhere(request, host)) return FROM_ELSEWHERE;
  if (Number(headers['content-length'] ?? 0) > MOST_BYTES) return tooLarge(MOST_BYTES);
  // files of the build cost next to nothing, and a page asks for dozens
  if (route === STATIC) return null;
  const kind = kindOf(method ?? '', route);
  const seconds = limits.wait({
    kind,
    address: addressOf(request, gate.behindProxy),
    person: personOf(headers),
  });
  if (seconds === 0) {
    const methods = gate.methodsOf(route);
    return methods === null || methods.includes(method ?? '') ? null : notAsked(methods);
  }
  gate.metrics.limited(kind);
  return tooOften(seconds);
}

/**
 * Gives an answer its headers at the last moment, when what it is can be told by its type.
 * @param {import('node:http').ServerResponse} response
 * @param {{ path: string, nonce: string, id: string, gate: Gate }} with_
 */
function dress(response, { path, nonce, id, gate }) {
  const writeHead = response.writeHead;
  /** @type {any} */ (response).writeHead = (/** @type {number} */ status, /** @type {any[]} */ ...rest) => {
    const given = rest.find((one) => one !== null && typeof one === 'object');
    if (Array.isArray(given))
      for (let at = 0; at < given.length; at += 2) response.setHeader(given[at], given[at + 1]);
    else if (given)
      for (const [name, value] of Object.entries(given))
        if (value !== undefined) response.setHeader(name, value);
    const contentType = String(response.getHeader('content-type') ?? '');
    for (const [name, value] of Object.entries(answerHeaders({ path, contentType, nonce, tls: gate.tls })))
      response.setHeader(name, value);
    response.setHeader('X-Request-Id', id);
    if (gate.buildId) response.setHeader('X-Kitwright-Build', gate.buildId);
    if (gate.stopping()) response.setHeader('Connection', 'close');
    const words = rest.find((one) => typeof one === 'string');
    return words === undefined ? writeHead.call(response, status) : writeHead.call(response, status, words);
  };
}
