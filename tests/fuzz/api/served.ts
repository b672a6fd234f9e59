import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import type { Role } from '@/lib/people/role';
import { PEOPLE } from '@/seed/hospital/people';
import { VAR } from '../../../scripts/bootstrap/places.mjs';
import { runOnDatabase } from '../../../scripts/bootstrap/prepare.mjs';
import { ledgerFaults, openCopy } from '../../faults/hospital';
import { type Acting, actingAs } from '../../faults/scanner';
import type { Target } from '../target';
import type { ApiAnswer } from './judge';
import { knownThings } from './known';
import { type ApiRequest, OPERATIONS } from './requests';
import { API_RUNS, apiTarget } from './target';

/** No answer takes as long, however busy the machine is. */
const HANGS_AFTER_MS = 60_000;

/** The built program over HTTP, on a demo that lives through all that is sent; its file and ledger are looked at in the end. */
export const servedApi: Target = {
  name: 'api',
  unit: 'bodies of every address',
  runs: API_RUNS,
  async attack(runs, seed, began) {
    const folder = join(VAR, 'test', 'fuzz');
    mkdirSync(folder, { recursive: true });
    const template = join(folder, `template-${process.pid}.sqlite`);
    await runOnDatabase('prepare-database.ts', { database: template });
    const hospital = await openCopy({ template, name: 'api', folder });
    try {
      const known = await knownThings(async (sql) => rowsOf(hospital.database, sql));
      const send = await senderTo(hospital.address);
      const outcomes = await apiTarget({ known, operations: OPERATIONS }, send).attack(runs, seed, began);
      await hospital.stop();
      const faults = [...ledgerFaults(hospital.database), ...fileFaults(hospital.database)];
      if (faults.length > 0) throw new Error(faults.join('; '));
      return outcomes;
    } finally {
      await hospital.close();
      for (const end of ['', '-wal', '-shm', '-heads.jsonl']) rmSync(template + end, { force: true });
    }
  },
};

function rowsOf(path: string, sql: string): Record<string, unknown>[] {
  const connection = new Sqlite(path, { readonly: true });
  try {
    return connection.prepare(sql).all() as Record<string, unknown>[];
  } finally {
    connection.close();
  }
}

function fileFaults(path: string): string[] {
  const whole = rowsOf(path, 'PRAGMA integrity_check').map((row) => String(Object.values(row)[0]));
  const dangling = rowsOf(path, 'PRAGMA foreign_key_check').map(
    (row) => `a row of ${row.table} points at nothing`,
  );
  return [...whole.filter((said) => said !== 'ok'), ...dangling];
}

/**
 * Sends as somebody of the role that is asked for: whoever was made to leave is followed by the next. All sign in first, since
 * what is sent also tries passwords, and whoever tries too many has to wait.
 */
async function senderTo(address: string): Promise<(request: ApiRequest) => Promise<ApiAnswer>> {
  const here = new Map<Role, Acting[]>();
  for (const { name, role } of PEOPLE)
    here.set(role, [...(here.get(role) ?? []), await actingAs(address, name, DEMO_PASSWORD)]);
  return async ({ role, method, path, body, headers }) => {
    const [acting] = here.get(role) ?? [];
    if (!acting) throw new Error(`nobody who is ${role} is signed in any more`);
    const answer = await fetch(address + path, {
      method,
      headers: { 'Content-Type': 'application/json', Cookie: acting.cookie, ...headers },
      body: JSON.stringify(markedBy(acting, body)) ?? 'null',
      signal: AbortSignal.timeout(HANGS_AFTER_MS),
    });
    const text = await answer.text();
    if (answer.status === 401 && text.includes('"not-signed-in"')) here.get(role)?.shift();
    return { status: answer.status, contentType: answer.headers.get('content-type') ?? '', text };
  };
}

/** What is sent as it was entered is marked with the session it was entered in, where it is marked at all. */
function markedBy({ sessionId, ticket }: Acting, body: unknown): unknown {
  if (typeof body !== 'object' || body === null || Array.isArray(body)) return body;
  const marked = (entry: unknown) =>
    typeof entry === 'object' && entry !== null && 'session' in entry && isMark(entry.session)
      ? { ...entry, session: { id: sessionId, ticket } }
      : entry;
  return Object.fromEntries(
    Object.entries(body).map(([name, value]) => [name, Array.isArray(value) ? value.map(marked) : value]),
  );
}

const isMark = (mark: unknown): boolean => typeof mark === 'object' && mark !== null && 'ticket' in mark;
