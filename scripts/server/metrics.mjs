import { subscribe } from 'node:diagnostics_channel';
import { statSync } from 'node:fs';
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import { kindOf } from './limits.mjs';

const METHODS = new Set(['GET', 'HEAD', 'OPTIONS', 'POST', 'PUT', 'PATCH', 'DELETE']);
const QUICK = [0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1, 3, 10];
const WRITES = [0.0005, 0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1, 3];

/** @param {string} path */
const bytesOf = (path) => {
  try {
    return statSync(path).size;
  } catch {
    return 0;
  }
};

/**
 * The figures of a running server, as Prometheus reads them. Each label has few values: patterns of the build, methods,
 * the first digit of a status. Nothing that somebody sent is one.
 * @param {string} database path of the file
 */
export function measure(database) {
  const register = new Registry();
  const registers = [register];
  collectDefaultMetrics({ register });
  const requests = new Histogram({
    name: 'kitwright_request_seconds',
    help: 'From the first byte of a request to the last of its answer, by declared address.',
    labelNames: ['method', 'route', 'status'],
    buckets: QUICK,
    registers,
  });
  const inFlight = new Gauge({
    name: 'kitwright_requests_in_flight',
    help: 'Requests that are being answered.',
    registers,
  });
  const limited = new Counter({
    name: 'kitwright_rate_limited_total',
    help: 'Requests that were asked for too often and not looked at.',
    labelNames: ['kind'],
    registers,
  });
  const refusedSignIns = new Counter({
    name: 'kitwright_sign_ins_refused_total',
    help: 'Sign-ins with a wrong secret, or too soon after one.',
    labelNames: ['because'],
    registers,
  });
  const queue = new Gauge({
    name: 'kitwright_write_queue_length',
    help: 'Writes that wait for their turn.',
    registers,
  });
  const waited = new Histogram({
    name: 'kitwright_write_wait_seconds',
    help: 'How long a write waited for its turn.',
    buckets: WRITES,
    registers,
  });
  const took = new Histogram({
    name: 'kitwright_transaction_seconds',
    help: 'How long a transaction took, its wait for the disk included; writes that wait share one.',
    buckets: WRITES,
    registers,
  });
  for (const [name, help, path] of [
    ['kitwright_database_bytes', 'Size of the database file.', database],
    ['kitwright_write_log_bytes', 'Size of the write-ahead log.', `${database}-wal`],
  ]) {
    new Gauge({
      name: /** @type {string} */ (name),
      help: /** @type {string} */ (help),
      registers,
      collect() {
        this.set(bytesOf(/** @type {string} */ (path)));
      },
    });
  }
  const ledger = new Gauge({
    name: 'kitwright_ledger_entries',
    help: 'Entries of the ledger.',
    registers,
  });
  const backup = new Gauge({
    name: 'kitwright_backup_age_seconds',
    help: 'Age of the newest proven backup; NaN where there is none.',
    registers,
  });

  subscribe('kitwright.write', (message) => {
    const { waiting, waitedMs, tookMs } = /** @type {import('../../db/tx').WriteNews} */ (message);
    queue.set(waiting);
    for (const ms of waitedMs) waited.observe(ms / 1000);
    if (tookMs !== null) took.observe(tookMs / 1000);
  });

  return {
    begun: () => inFlight.inc(),
    /** @param {{ method: string, route: string, status: number, seconds: number }} answer */
    answered({ method, route, status, seconds }) {
      inFlight.dec();
      const known = METHODS.has(method) ? method : 'other';
      requests.observe({ method: known, route, status: `${Math.floor(status / 100)}xx` }, seconds);
      if (kindOf(method, route) === 'signIn' && (status === 401 || status === 429))
        refusedSignIns.inc({ because: status === 401 ? 'wrong' : 'tooSoon' });
    },
    /** @param {string} kind */
    limited: (kind) => limited.inc({ kind }),
    /**
     * Everything as text, with what the program alone knows.
     * @param {{ ledgerEntries: number, backupAgeSeconds: number | null }} figures
     */
    async text({ ledgerEntries, backupAgeSeconds }) {
      ledger.set(ledgerEntries);
      backup.set(backupAgeSeconds ?? Number.NaN);
      return { contentType: register.contentType, text: await register.metrics() };
    },
  };
}
