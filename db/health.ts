import { existsSync, statfsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import type { LedgerRow } from '@/lib/ledger/chain';
import { chainChecker } from '@/lib/ledger/checkChain';
import { sha256 } from './ledger';
import { openLedgerFile, pageFaults } from './ledgerFile';

/** How many of the newest entries are read when there is no time for all. */
const NEWEST = 1000;

/** Free bytes on the disk of a path; `null` where the system does not say. */
export function freeSpace(path: string): number | null {
  try {
    const { bavail, bsize } = statfsSync(existsSync(path) ? path : dirname(path));
    return bavail * bsize;
  } catch {
    return null;
  }
}

export const bytesOf = (path: string): number => (existsSync(path) ? statSync(path).size : 0);

/** Whether two paths are on one disk, as far as the system says. */
export function isSameDisk(one: string, other: string): boolean {
  const disk = (path: string) => statSync(existsSync(path) ? path : dirname(path)).dev;
  return disk(one) === disk(other);
}

/** What a quick look at a database file finds, read only and without reading all of it. */
export interface QuickLook {
  /** What the engine says of its pages, without comparing indexes. */
  pages: string[];
  danglingRows: number;
  /** Of the newest entries of the ledger: how many were read, and how many do not follow from the one before. */
  entries: number;
  wrongEntries: number;
  newest: { seq: number; hash: string; enteredAt: string } | null;
  isDemo: boolean;
}

/** Looks at the file at `path`, which may be in use. Throws what the engine says when it is no database. */
export function quickLook(path: string): QuickLook {
  const { connection, close } = openLedgerFile(path);
  try {
    const pages = pageFaults(connection, 'quick_check');
    const rows = connection
      .prepare(
        `SELECT * FROM (SELECT seq, form, done_at AS doneAt, entered_at AS enteredAt, person_id AS personId, action,
           subject_kind AS subjectKind, subject_id AS subjectId, detail AS detailText, previous_hash AS previousHash, hash
         FROM ledger ORDER BY seq DESC LIMIT ${NEWEST}) ORDER BY seq`,
      )
      .all() as LedgerRow[];
    const newest = rows.at(-1);
    return {
      pages,
      danglingRows: (connection.pragma('foreign_key_check') as unknown[]).length,
      entries: rows.length,
      wrongEntries: wrongAmong(rows),
      newest: newest ? { seq: newest.seq, hash: newest.hash, enteredAt: newest.enteredAt } : null,
      isDemo: connection.prepare("SELECT 1 FROM settings WHERE key = 'demo'").get() !== undefined,
    };
  } finally {
    close();
  }
}

/** The first of them follows from one that is not read; what a seal closes would take all entries to check. */
function wrongAmong(rows: readonly LedgerRow[]): number {
  const checker = chainChecker(sha256);
  return rows.filter((row, at) =>
    checker
      .take(row)
      .some(({ kind }) => kind === 'content' || kind === 'form' || (at > 0 && kind !== 'seal')),
  ).length;
}
