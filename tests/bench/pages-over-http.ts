import { mkdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { VAR } from '../../scripts/bootstrap/places.mjs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';
import { prepareProgram, runOnDatabase } from '../../scripts/bootstrap/prepare.mjs';
import { startServer } from '../../scripts/bootstrap/server.mjs';
import { signIn } from '../faults/scanner';
import { type BenchRow, besideOf, percentiles } from './row';

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

/** Pages of the demo from the built server, each beside the same bytes handed out by a bare node:http server. */
export async function bench(): Promise<BenchRow[]> {
  if (!process.env.KITWRIGHT_DIST) await prepareProgram({ build: true, say: () => undefined });
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
