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
  /** The path of its log. */
  log: string;
  /** Everything the server printed so far. */
  serverOutput(): string;
  close(): Promise<void>;
}

/** Starts the built application on a fresh copy of the demo; takes about a second. `env`: variables of its environment. */
export async function openHospital(name: string, env: Record<string, string> = {}): Promise<Hospital> {
  mkdirSync(HOSPITALS, { recursive: true });
  const port = await requireFreePort(0, HOST);
  const database = join(HOSPITALS, `${basename(name, '.spec.ts')}-${port}.sqlite`);
  copyFileSync(TEMPLATE, database);
  const log = `${database}.log`;
  const server = await startServer({ port, host: HOST, database, env: { KITWRIGHT_LOG: log, ...env } });
  return {
    address: server.address,
    database,
    log,
    serverOutput: server.output,
    async close() {
      await server.stop();
      for (const end of ['', '-wal', '-shm', '-heads.jsonl', '.log']) rmSync(database + end, { force: true });
    },
  };
}
