import Sqlite from 'better-sqlite3';
import type { LedgerRow } from '@/lib/ledger/chain';
import { type HeadLine, type KnownHead, readHeads } from '@/lib/ledger/heads';
import { ledgerVerifier, type Verification } from '@/lib/ledger/verify';
import { sha256 } from './ledger';

/** What an auditor finds in a database file and in the second place, before it is put into words. */
export interface LedgerAudit extends Verification {
  /** Guards against change that are not there, or not as they were made. */
  guardsGone: string[];
  /** What the database engine says of its own file; `null` when it is content. */
  damaged: string | null;
  /** Entries whose list of names (by which they are found on screen) is not what the entry says. */
  namesOff: number;
  heads: number;
  /** Lines of the second place that are no heads. */
  unreadableHeads: number[];
  /** Heads the database says were written to the second place, which are not there. */
  headsGone: number;
}

const GUARDS: Record<string, string> = {
  ledger_is_never_changed:
    "CREATE TRIGGER ledger_is_never_changed BEFORE UPDATE ON ledger BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END",
  ledger_is_never_shortened:
    "CREATE TRIGGER ledger_is_never_shortened BEFORE DELETE ON ledger BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END",
  ledger_things_are_never_changed:
    "CREATE TRIGGER ledger_things_are_never_changed BEFORE UPDATE ON ledger_things BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END",
  ledger_things_are_never_deleted:
    "CREATE TRIGGER ledger_things_are_never_deleted BEFORE DELETE ON ledger_things BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END",
  ledger_heads_are_never_changed:
    "CREATE TRIGGER ledger_heads_are_never_changed BEFORE UPDATE ON ledger_heads BEGIN SELECT raise(ABORT, 'heads that were written stay'); END",
  ledger_heads_are_never_deleted:
    "CREATE TRIGGER ledger_heads_are_never_deleted BEFORE DELETE ON ledger_heads BEGIN SELECT raise(ABORT, 'heads that were written stay'); END",
};
/** Those of the first release, for a file that was not yet brought up to date. */
const FIRST_GUARDS = ['ledger_is_never_changed', 'ledger_is_never_shortened'];

/**
 * Checks the ledger of the database file at `path` without writing to it, from one moment's view, so that it may be in use.
 * `headsText` is the content of the second place; it was read before, so every head in it was in the ledger by then. `null`: that
 * place is not looked at, as where a backup is opened on another machine.
 */
export function auditLedgerFile(
  path: string,
  headsText: string | null,
  printed: readonly KnownHead[] = [],
): LedgerAudit {
  const file = openLedgerFile(path);
  try {
    const { heads, unreadable } = readHeads(headsText ?? '');
    const verifier = ledgerVerifier(sha256, [...heads, ...printed]);
    for (const row of file.rows()) verifier.take(row);
    return {
      ...verifier.end(),
      guardsGone: guardsGone(file.connection, file.present),
      damaged: damage(file.connection),
      // an entry whose own text can't be read is no entry, as the chain says too
      namesOff: file.present
        ? unlessUnreadable(
            () => namesOff(file.connection),
            () => 1,
          )
        : 0,
      heads: heads.length + printed.length,
      unreadableHeads: unreadable,
      headsGone: file.present && headsText !== null ? headsGone(file.connection, heads) : 0,
    };
  } finally {
    file.close();
  }
}

/** The stored entries of a database file in order, read only. `present`: the file has the present schema of the ledger. */
export function openLedgerFile(path: string) {
  const connection = new Sqlite(path, { readonly: true, fileMustExist: true });
  connection.pragma('query_only = ON');
  connection.exec('BEGIN');
  const columns = connection.pragma('table_info(ledger)') as { name: string }[];
  const present = columns.some(({ name }) => name === 'form');
  return {
    connection,
    present,
    rows: () =>
      connection
        .prepare(
          `SELECT seq, ${present ? 'form' : '1 AS form'}, done_at AS doneAt, entered_at AS enteredAt,
             person_id AS personId, action, subject_kind AS subjectKind, subject_id AS subjectId,
             detail AS detailText, previous_hash AS previousHash, hash
           FROM ledger ORDER BY seq`,
        )
        .iterate() as IterableIterator<LedgerRow>,
    close: () => connection.close(),
  };
}

function guardsGone(connection: Sqlite.Database, present: boolean): string[] {
  const found = new Map(
    (
      connection.prepare("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'").all() as {
        name: string;
        sql: string;
      }[]
    ).map(({ name, sql }) => [name, sql.replaceAll(/\s+/g, ' ').trim()]),
  );
  const names = present ? Object.keys(GUARDS) : FIRST_GUARDS;
  return names.filter((name) => found.get(name) !== GUARDS[name]);
}

function damage(connection: Sqlite.Database): string | null {
  const lines = pageFaults(connection, 'integrity_check');
  return lines.length === 0 ? null : lines.join('; ');
}

/** What the engine says of its own file; `quick_check` compares no indexes. */
export function pageFaults(connection: Sqlite.Database, check: 'integrity_check' | 'quick_check'): string[] {
  return unlessUnreadable(
    () => (connection.pragma(`${check}(5)`) as Record<string, string>[]).map((row) => row[check] ?? ''),
    (said) => [`a row cannot be read: ${said}`],
  ).filter((line) => line !== 'ok');
}

/**
 * What the engine can’t make out in a row, such as JSON that a disk altered, it throws as an error of the statement: that is a
 * finding like any other. Every other error is thrown on.
 */
function unlessUnreadable<T>(look: () => T, unreadable: (said: string) => T): T {
  try {
    return look();
  } catch (error) {
    if (error instanceof Sqlite.SqliteError && error.code === 'SQLITE_ERROR')
      return unreadable(error.message);
    throw error;
  }
}

function namesOff(connection: Sqlite.Database): number {
  const row = connection
    .prepare(
      `SELECT count(DISTINCT seq) AS off FROM (
         SELECT * FROM (SELECT thing, seq FROM ledger_names EXCEPT SELECT thing, seq FROM ledger_things)
         UNION ALL SELECT * FROM (SELECT thing, seq FROM ledger_things EXCEPT SELECT thing, seq FROM ledger_names))`,
    )
    .get() as { off: number };
  return row.off;
}

function headsGone(connection: Sqlite.Database, heads: readonly HeadLine[]): number {
  const there = new Set(heads.map(({ seq, hash }) => `${seq} ${hash}`));
  const told = connection.prepare('SELECT seq, hash FROM ledger_heads').all() as {
    seq: number;
    hash: string;
  }[];
  return told.filter(({ seq, hash }) => !there.has(`${seq} ${hash}`)).length;
}
