import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import Sqlite from 'better-sqlite3';
import { assertDurable } from '@/db/client';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { VAR } from '../../scripts/bootstrap/places.mjs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';
import { prepareProgram, runOnDatabase } from '../../scripts/bootstrap/prepare.mjs';
import { startServer } from '../../scripts/bootstrap/server.mjs';
import { newScan, Refused, sendScan, signIn } from '../faults/scanner';
import { type BenchRow, percentiles } from './row';

const HOST = '127.0.0.1';
const SCANNERS = 50;
const A_SECOND = 2;
const SECONDS = 15;
/** 99 of 100 scans are acknowledged within this, on a quiet machine of two cores. */
const BOUND_MS = 150;
const FULL_LOAD_SECONDS = 6;

/**
 * Scans over HTTP to the built server: 50 scanners at two a second each, then as fast as they are taken, held against how
 * many single-row commits the same disk takes in the same run.
 */
export async function bench(): Promise<BenchRow[]> {
  // a build of one's own is taken as it is
  if (!process.env.KITWRIGHT_DIST) await prepareProgram({ build: true, say: () => undefined });
  const folder = join(VAR, 'test', 'bench');
  mkdirSync(folder, { recursive: true });
  const port = await requireFreePort(0, HOST);
  const database = join(folder, `scans-${port}.sqlite`);
  await runOnDatabase('prepare-database.ts', { database });
  const server = await startServer({ port, host: HOST, database, env: { KITWRIGHT_RATE: '100' } });
  try {
    const cookies = await Promise.all(
      ['Wren Adeyemi', 'Tomas Birkett', 'Jolene Stott'].map((name) =>
        signIn(server.address, name, DEMO_PASSWORD),
      ),
    );
    const send = async (at: number) => {
      const scan = newScan(codeOf(at));
      const cookie = cookies[at % cookies.length] ?? '';
      // the server closes kept connections that idle for five seconds; what met one that was closing is sent again, as the
      // program's own scanner does, and its time goes on counting
      for (let tries = 1; ; tries += 1) {
        try {
          return await sendScan(server.address, cookie, scan);
        } catch (error) {
          if (error instanceof Refused || tries === 5) throw error;
        }
      }
    };
    // the first answers pay for what is loaded once
    for (let at = 0; at < 20; at += 1) await send(at);
    const rawBefore = rawCommits(`${database}.raw`);
    const times = await asScheduled(send);
    const full = await atFullLoad(send);
    const raw = (rawBefore + rawCommits(`${database}.raw`)) / 2;
    return [
      {
        ...percentiles(times),
        name: `scans: ${SCANNERS} scanners, ${A_SECOND} a second each, ${times.length} scans`,
        bound: BOUND_MS,
        boundOn: 'p99',
      },
      {
        ...percentiles(full.times),
        name: `scans: as fast as taken, ${Math.round(full.perSecond)} a second of ${Math.round(raw)} raw commits`,
        bound: null,
        ratio: full.perSecond / raw,
        beside: 'single rows committed on the same disk',
      },
    ];
  } finally {
    await server.stop();
    for (const end of ['', '-wal', '-shm', '-heads.jsonl', '.raw', '.raw-wal', '.raw-shm'])
      rmSync(database + end, { force: true });
  }
}

const codeOf = (at: number) => (at % 3 === 0 ? 'KW-UNKNOWN' : `(01)09521234567891(10)LOT-${at % 40}`);

/** Each scanner keeps to its own times whatever the answers take, and a late answer counts from when the scan was due. */
async function asScheduled(send: (at: number) => Promise<void>): Promise<number[]> {
  const began = performance.now();
  const times: number[] = [];
  const sent: Promise<void>[] = [];
  await Promise.all(
    Array.from({ length: SCANNERS }, async (_, scanner) => {
      for (let turn = 0; turn < SECONDS * A_SECOND; turn += 1) {
        const due = began + ((turn + scanner / SCANNERS) * 1000) / A_SECOND;
        await sleep(Math.max(0, due - performance.now()));
        sent.push(
          send(scanner).then(() => {
            times.push(performance.now() - due);
          }),
        );
      }
    }),
  );
  await Promise.all(sent);
  return times;
}

/** Every scanner sends its next scan when the last is acknowledged. */
async function atFullLoad(
  send: (at: number) => Promise<void>,
): Promise<{ times: number[]; perSecond: number }> {
  const times: number[] = [];
  const began = performance.now();
  const until = began + FULL_LOAD_SECONDS * 1000;
  await Promise.all(
    Array.from({ length: SCANNERS }, async (_, scanner) => {
      while (performance.now() < until) {
        const start = performance.now();
        await send(scanner);
        times.push(performance.now() - start);
      }
    }),
  );
  return { times, perSecond: (times.length * 1000) / (performance.now() - began) };
}

/** Durable commits of one small row each, a second, with the program's own pragmas on the same disk. */
function rawCommits(path: string): number {
  const connection = new Sqlite(path);
  assertDurable(connection);
  connection.exec('CREATE TABLE IF NOT EXISTS rows (id INTEGER PRIMARY KEY, text TEXT) STRICT');
  const put = connection.prepare('INSERT INTO rows (text) VALUES (?)');
  const began = performance.now();
  let commits = 0;
  while (performance.now() - began < 2000) {
    put.run('one row');
    commits += 1;
  }
  const perSecond = (commits * 1000) / (performance.now() - began);
  connection.close();
  return perSecond;
}
