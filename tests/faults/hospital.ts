import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { auditLedgerFile } from '@/db/ledgerFile';
import { headsPath } from '@/db/ledgerHeadsFile';
import { ledgerFaultSentence } from '@/lib/wording/ledger-verify';
import { VAR } from '../../scripts/bootstrap/places.mjs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';
import { startServer } from '../../scripts/bootstrap/server.mjs';
import { scanFaults } from './checker';

const HOST = '127.0.0.1';

/** The built server on a copy of a demo, and what it has in the end. */
export interface FaultyHospital {
  address: string;
  database: string;
  pid: number;
  stop(): Promise<void>;
  /** Stops it and removes its files. */
  close(): Promise<void>;
}

/** Starts the built server on a copy of `template` in `folder`; `env` for what is done to it. */
export async function openCopy({
  template,
  name,
  folder = join(VAR, 'test', 'faults'),
  env = {},
}: {
  template: string;
  name: string;
  folder?: string;
  env?: Record<string, string>;
}): Promise<FaultyHospital> {
  mkdirSync(folder, { recursive: true });
  const port = await requireFreePort(0, HOST);
  const database = join(folder, `${name}-${port}.sqlite`);
  copyFileSync(template, database);
  const server = await startServer({ port, host: HOST, database, env: { KITWRIGHT_RATE: '100', ...env } });
  const { address, pid = 0, stop } = server;
  return {
    address,
    database,
    pid,
    stop,
    async close() {
      await stop();
      for (const end of ['', '-wal', '-shm', '-heads.jsonl']) rmSync(database + end, { force: true });
    },
  };
}

/** Scans that were sent, as their senders know it. */
export interface SentScans {
  acknowledged: Set<string>;
  unknown: Set<string>;
}

/** What is wrong with the scans and the ledger of a database whose server is stopped, in sentences; and how many are lost. */
export function scansFound(database: string, { acknowledged, unknown }: SentScans) {
  const connection = new Sqlite(database, { readonly: true });
  const all = (sql: string) => connection.prepare(sql).pluck().all() as string[];
  const stored = all('SELECT id FROM scans');
  const entered = all("SELECT subject_id FROM ledger WHERE action = 'record-scan'");
  connection.close();
  const there = new Set(stored);
  return {
    stored,
    lost: [...acknowledged].filter((id) => !there.has(id)).length,
    faults: [...scanFaults({ acknowledged, unknown, stored, entered }), ...ledgerFaults(database)],
  };
}

/** What an auditor finds wrong with the ledger and the file, with the heads beside it. */
export function ledgerFaults(database: string): string[] {
  const place = headsPath(database, process.env.KITWRIGHT_HEADS);
  const audit = auditLedgerFile(database, existsSync(place) ? readFileSync(place, 'utf8') : '');
  return [
    ...audit.faults.map(ledgerFaultSentence),
    ...(audit.damaged === null ? [] : [`the database is damaged: ${audit.damaged}`]),
    ...(audit.unreadableHeads.length === 0 ? [] : ['the file of heads has lines that are none']),
  ];
}
