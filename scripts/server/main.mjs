// The server's own process: the built application behind what every request passes, whatever answers it.
import { AsyncLocalStorage } from 'node:async_hooks';
import { EventEmitter } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import next from 'next';
import { ROOT } from '../bootstrap/places.mjs';
import { takeRequests } from './gate.mjs';
import { errorFields, logLevel, logPlace, openLog, withoutQuotes } from './log.mjs';
import { methodsOf } from './methods.mjs';
import { measure } from './metrics.mjs';
import { patternsOf } from './patterns.mjs';
import { stopInOrder } from './stop.mjs';

const { env } = process;
const port = Number(env.PORT);
const host = env.HOST ?? '127.0.0.1';
const database = env.KITWRIGHT_DB ?? '';
const build = join(ROOT, env.KITWRIGHT_DIST ?? '.next');
const buildId = existsSync(join(build, 'BUILD_ID'))
  ? readFileSync(join(build, 'BUILD_ID'), 'utf8').trim()
  : '';

const place = logPlace(env, database);
const log = openLog({ place, level: logLevel(env), of: 'server' });
const metrics = measure(database);
const requests = new AsyncLocalStorage();
// what the application finds of the server it runs in; `app/_server/running-server.ts` says what it takes from it
/** @type {any} */ (globalThis)[Symbol.for('kitwright.server')] = {
  requests,
  buildId,
  metrics: metrics.text,
};

// faults that nobody caught are printed by the framework: the log gets them with their stack, the screen as it always did
for (const level of /** @type {const} */ (['error', 'warn'])) {
  const print = console[level].bind(console);
  console[level] = (/** @type {unknown[]} */ ...said) => {
    const error = said.find((one) => one instanceof Error);
    const text = withoutQuotes(said.filter((one) => typeof one === 'string').join(' '));
    log[level](
      error ? { err: error, request: requests.getStore()?.id } : {},
      text.slice(0, 500) || 'a fault',
    );
    const fault = error ? errorFields(error) : null;
    if (place !== '-')
      print(
        fault
          ? `${text} ${fault.type} ${fault.code ?? ''}: ${fault.message}\n${fault.stack ?? ''}`.trim()
          : text,
      );
  };
}

// what the application asks of itself, as after an action that leads elsewhere, goes here: never where a Host header says
env.__NEXT_PRIVATE_ORIGIN = `http://${host === '0.0.0.0' || host === '::' ? 'localhost' : host}:${port}`;
const server = createServer({ requestTimeout: 120_000, headersTimeout: 20_000, requireHostHeader: false });
// no connection becomes another kind of one: the framework would take what asks for it from the server, and keep it without
// an answer or an end. It is given nothing to listen at, and such a request is answered like any other.
const httpServer = /** @type {import('node:http').Server} */ (new EventEmitter());
// not quiet: a quiet one tells nobody of the faults of pages
const app = next({ dev: false, dir: ROOT, hostname: host, port, quiet: false, httpServer });
// a connection on which nothing moves either way, as of somebody who asks and does not read; none of our answers thinks as long
server.timeout = 120_000;
const stop = stopInOrder(server, { log, close: () => app.close() });
await app.prepare();
const answer = app.getRequestHandler();
takeRequests(server, {
  answer,
  requests,
  patternOf: patternsOf(build),
  methodsOf: methodsOf(join(ROOT, 'app/api-docs/openapi.json')),
  stopping: stop.isStopping,
  log,
  metrics,
  buildId,
  behindProxy: env.KITWRIGHT_PROXY?.trim() === 'yes',
  tls: env.KITWRIGHT_ADDRESS?.trim().startsWith('https:') ?? false,
  times: Number(env.KITWRIGHT_RATE?.trim() || 1),
});
server.on('error', (error) => {
  console.error(error);
  process.exit(1);
});
server.listen(port, host, () => log.info({ port, host, build: buildId, node: process.version }, 'started'));
