import type { BackupProof } from '@/lib/backups/manifest';
import { headsUpTo } from '@/lib/ledger/heads';
import { backupWords as words } from '@/lib/wording/backups';
import { ledgerFindings } from '@/lib/wording/ledger-verify';
import { runningWords } from '@/lib/wording/running';
import { auditLedgerFile, openLedgerFile } from '../ledgerFile';
import { migrationsOf } from '../migrate';

interface Prove {
  /** The copy: a database file of its own, that nothing else has open. */
  path: string;
  now: string;
  /**
   * The second place of the ledger's heads; empty where there is none. Heads later than the copy say nothing of it. `null`: it
   * is not looked at.
   */
  headsText: string | null;
  /** Whether heads that are not there any more are a fault: of a database they are, of what a copy is worth they say nothing. */
  areHeadsLookedFor: boolean;
}

/**
 * Opens a copy and reads all of it: whether the engine finds its pages and indexes whole, whether every row it points at is
 * there, whether this program knows its schema, and whether its ledger is whole and goes with its heads. Writes nothing.
 */
export function proveCopy({ path, now, headsText, areHeadsLookedFor }: Prove): BackupProof {
  const faults: string[] = [];
  const { recorded, unknown, changed } = migrationsOf(path);
  if (unknown.length > 0) faults.push(words.newer(unknown));
  if (changed.length > 0) faults.push(words.otherMigrations(changed));
  const dangling = danglingRows(path);
  if (dangling > 0) faults.push(runningWords.dangling(dangling));
  const { head: last } = newestHeadOf(path);
  const heads = headsText === null ? null : headsUpTo(headsText, last?.seq ?? 0);
  const audit = auditLedgerFile(path, heads);
  const told = areHeadsLookedFor ? audit : { ...audit, headsGone: 0 };
  faults.push(...ledgerFindings(told, words.secondPlace));
  return {
    provedAt: now,
    faults,
    ledgerEntries: audit.entries,
    head: audit.head,
    schema: recorded.at(-1) ?? '',
  };
}

/** Rows that point at a row that is not there. */
function danglingRows(path: string): number {
  const file = openLedgerFile(path);
  try {
    return (file.connection.pragma('foreign_key_check') as unknown[]).length;
  } finally {
    file.close();
  }
}

/** The newest entry of the ledger in a database file, and the hash of its first, by which ledgers are told apart. */
export function newestHeadOf(path: string): {
  head: { seq: number; hash: string } | null;
  first: string | null;
} {
  const { connection, close } = openLedgerFile(path);
  try {
    const [newest, first] = ['DESC', 'ASC'].map((order) =>
      connection.prepare(`SELECT seq, hash FROM ledger ORDER BY seq ${order} LIMIT 1`).get(),
    ) as ({ seq: number; hash: string } | undefined)[];
    return { head: newest ?? null, first: first?.hash ?? null };
  } finally {
    close();
  }
}
