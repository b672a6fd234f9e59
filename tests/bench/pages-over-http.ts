import { randomUUID } from 'node:crypto';
import { mkdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { openDatabase } from '@/db/client';
import { beginSession } from '@/db/operations/people/begin-session';
import { newToken } from '@/db/secrets';
import { type NewId, personId } from '@/lib/identity/ids';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { VAR } from '../../scripts/bootstrap/places.mjs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';
import { prepareProgram, runOnDatabase } from '../../scripts/bootstrap/prepare.mjs';
import { startServer } from '../../scripts/bootstrap/server.mjs';
import { signIn } from '../faults/scanner';
import { type BenchRow, besideOf, percentiles } from './row';
import { hospitalOf, yearsThere } from './years/hospitals';

const HOST = '127.0.0.1';
const ROUNDS = 20;
/** To the last byte of the answer, as a browser beside the server would get it. */
const BOUND_MS = 300;
const PAGES = [
  '/',
  '/sets',
  '/stock',
  '/catalogue',
  '/cases',
  '/theatre-list',
  '/work',
  '/loads',
  '/restock',
  '/ledger',
];

/** In a hospital of years: the lists, and single pages that hold much. What is worked out once a minute follows their head. */
const LISTS = [
  '/sets',
  '/stock',
  '/stock?view=lots',
  '/stock?q=plate',
  '/stock/counts',
  '/catalogue',
  '/configurations',
  '/cases',
  '/theatre-list/week',
  '/plans',
  '/work',
  '/work/board',
  '/work/short',
  '/loads',
  '/sterilisers',
  '/holds',
  '/repairs',
  '/emergency',
  '/lenders',
  '/loans',
  '/consignment',
  '/fit',
  '/fit/table',
  '/restock',
  '/restock/gaps',
  '/restock/orders',
  '/restock/terms',
  '/trace',
  '/recalls',
  '/notices',
  '/places',
  '/places/place_store',
  '/exchange',
];

/** Pages of the demo from the built server, each beside the same bytes handed out by a bare node:http server. */
export async function bench(): Promise<BenchRow[]> {
  if (!process.env.KITWRIGHT_DIST) await prepareProgram({ build: true, say: () => undefined });
  const rows = await ofTheDemo();
  for (const years of yearsThere()) rows.push(...(await ofYears(years)));
  return rows;
}

async function ofTheDemo(): Promise<BenchRow[]> {
  const folder = join(VAR, 'test', 'bench');
  mkdirSync(folder, { recursive: true });
  const port = await requireFreePort(0, HOST);
  const database = join(folder, `pages-${port}.sqlite`);
  await runOnDatabase('prepare-database.ts', { database });
  const server = await startServer({ port, host: HOST, database, env: { KITWRIGHT_RATE: '100' } });
  try {
    const cookie = await signIn(server.address, 'Gwen Sallis', DEMO_PASSWORD);
    const rows: BenchRow[] = [];
    for (const page of PAGES) rows.push(await measured(server.address, page, cookie));
    return rows;
  } finally {
    await server.stop();
    for (const end of ['', '-wal', '-shm', '-heads.jsonl']) rmSync(database + end, { force: true });
  }
}

/** Every list page of a hospital of so many years, to the last byte; of what follows a page, `list-pages` measures the work. */
async function ofYears(years: number): Promise<BenchRow[]> {
  const database = await hospitalOf(years);
  const port = await requireFreePort(0, HOST);
  const cookie = await sessionIn(database);
  const server = await startServer({ port, host: HOST, database, env: { KITWRIGHT_RATE: '100' } });
  try {
    const rows: BenchRow[] = [];
    for (const page of LISTS) {
      const row = await measured(server.address, page, cookie);
      rows.push({ ...row, name: `${row.name}, ${years} years` });
    }
    return rows;
  } finally {
    await server.stop();
    rmSync(`${database}-heads.jsonl`, { force: true });
  }
}

/** A session of a technician of that hospital, where nobody has a password. */
async function sessionIn(database: string): Promise<string> {
  const db = openDatabase(database);
  const now = new Date().toISOString();
  const person = { personId: personId.parse('person_t0'), method: 'password', workstationId: null } as const;
  const newId: NewId = (kind) => `${kind}_${randomUUID()}`;
  const { token } = await db.tx((write) => beginSession(write, { now, newId, newToken, ...person }));
  db.close();
  return `__Host-session=${token}`;
}

async function measured(address: string, page: string, cookie: string): Promise<BenchRow> {
  const ask = async () => {
    const answer = await fetch(`${address}${page}`, { headers: { Cookie: cookie }, redirect: 'manual' });
    const bytes = await answer.arrayBuffer();
    if (answer.status !== 200) throw new Error(`${page} answered ${answer.status}`);
    return bytes;
  };
  const bytes = await ask();
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const began = performance.now();
    await ask();
    times.push(performance.now() - began);
  }
  const { p50, p95 } = percentiles(times);
  const name = `page ${page}, ${Math.round(bytes.byteLength / 1024)} kB to the last byte`;
  const ratio = p50 / (await handedOut(bytes));
  return { name, p50, p95, bound: BOUND_MS, ratio, beside: 'node:http handing out the same bytes' };
}

async function handedOut(bytes: ArrayBuffer): Promise<number> {
  const bare = createServer((_, answer) => answer.end(Buffer.from(bytes)));
  await new Promise<void>((listening) => bare.listen(0, HOST, listening));
  const { port } = bare.address() as AddressInfo;
  const took = await besideOf(async () => (await fetch(`http://${HOST}:${port}/`)).arrayBuffer());
  bare.closeAllConnections();
  bare.close();
  return took;
}
