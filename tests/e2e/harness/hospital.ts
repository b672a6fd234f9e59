import { copyFileSync, mkdirSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { VAR } from '../../../scripts/bootstrap/places.mjs';
import { requireFreePort } from '../../../scripts/bootstrap/port.mjs';
import { startServer } from '../../../scripts/bootstrap/server.mjs';

/** Where the databases of one run are. */
export const HOSPITALS = join(VAR, 'test', 'hospitals');
/** The demo of this run, never opened by a server itself. */
export const TEMPLATE = join(HOSPITALS, 'template.sqlite');

const HOST = '127.0.0.1';

/** A server of its own on a demo hospital of its own. */
export interface Hospital {
  /** e.g. "http://127.0.0.1:41234" */
  address: string;
  /** The path of its database, for a test that must look behind the screens. */
  database: string;
  /** Everything the server printed so far. */
  serverOutput(): string;
  close(): Promise<void>;
}

/** Starts the built application on a fresh copy of the demo; takes about a second. */
export async function openHospital(name: string): Promise<Hospital> {
  mkdirSync(HOSPITALS, { recursive: true });
  const port = await requireFreePort(0, HOST);
  const database = join(HOSPITALS, `${basename(name, '.spec.ts')}-${port}.sqlite`);
  copyFileSync(TEMPLATE, database);
  const server = await startServer({ port, host: HOST, database });
  return {
    address: server.address,
    database,
    serverOutput: server.output,
    async close() {
      await server.stop();
      for (const end of ['', '-wal', '-shm', '-heads.jsonl']) rmSync(database + end, { force: true });
    },
  };
}
