import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import Sqlite from 'better-sqlite3';
import { headsUpTo, readHeads } from '@/lib/ledger/heads';
import { backupWords as words } from '@/lib/wording/backups';
import { openDatabase } from '../client';
import { migrate } from '../migrate';
import { tellRestored } from '../operations/running/tell-restored';
import { syncFile } from './make';
import { CannotOpen, type Opened, openBackup } from './open';
import { newestHeadOf } from './prove';

interface PutBack {
  backup: string;
  keyFile: string | null;
  /** The database it is put in place of. */
  database: string;
  /** The second place of the ledger's heads. */
  headsPlace: string;
  now: string;
  /** Who does it, as the machine knows them. */
  by: string;
}

interface WasPutBack extends Opened {
  /** Where the database that was there is kept; `null` where there was none. */
  aside: string | null;
  /** Ledger entries known to have been written after the backup. */
  lost: number;
}

/**
 * Puts a backup in place of the database: opened and proven first, refused when anything is wrong with it (a newer schema
 * too), or while anything has the database open. What was there is kept beside it, and so are the heads written since; the
 * ledger says what was put back and how many entries are known to be missing.
 *
 * Throws `CannotOpen` with the reason in words; nothing is changed then.
 */
export async function putBack(request: PutBack): Promise<WasPutBack> {
  const { database, headsPlace, now } = request;
  const fresh = `${database}.putting-back`;
  try {
    const opened = await openBackup({ path: request.backup, keyFile: request.keyFile, to: fresh, now });
    if (opened.proof.faults.length > 0)
      throw new CannotOpen([...opened.proof.faults, words.notPutBack].join('\n'));
    requireUnused(database);
    const lost = entriesAfter(opened, database, headsPlace);
    // a crash before this leaves the old database, and after it the backup; each whole
    migrate(fresh);
    await tellLedger(fresh, request, opened, lost);
    const stamp = now.replaceAll(/[-:]|\.\d+/g, '');
    const aside = existsSync(database) ? `${database}.before-${stamp}` : null;
    if (aside) moveDatabase(database, aside);
    moveDatabase(fresh, database);
    syncFile(dirname(database));
    keepHeads(headsPlace, opened.proof.head?.seq ?? 0, stamp);
    return { ...opened, aside, lost };
  } finally {
    for (const end of ['', '-wal', '-shm', '-journal']) rmSync(fresh + end, { force: true });
  }
}

/** Refused while another process has it open: it would go on writing into the file that is set aside. */
function requireUnused(database: string): void {
  if (!existsSync(database)) return;
  const connection = new Sqlite(database);
  try {
    connection.pragma('busy_timeout = 500');
    connection.pragma('locking_mode = EXCLUSIVE');
    connection.exec('BEGIN EXCLUSIVE');
    connection.exec('ROLLBACK');
    // what lies in its log goes into the file, so that the file alone is whole
    connection.pragma('wal_checkpoint(TRUNCATE)');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (/^SQLITE_(BUSY|LOCKED)/.test(code)) throw new CannotOpen(words.inUse(database));
    // a database that cannot even be opened is what a backup is put back for
  } finally {
    connection.close();
  }
}

function moveDatabase(from: string, to: string): void {
  for (const end of ['', '-wal', '-shm']) if (existsSync(from + end)) renameSync(from + end, to + end);
}

/** What is known of entries after the backup: from the database that was there, and from the heads kept outside it. */
function entriesAfter({ proof }: Opened, database: string, headsPlace: string): number {
  const copied = proof.head?.seq ?? 0;
  let newest = copied;
  try {
    if (existsSync(database)) newest = Math.max(newest, newestHeadOf(database).head?.seq ?? 0);
  } catch {
    // damaged: the heads say what they can
  }
  if (existsSync(headsPlace))
    for (const { seq } of readHeads(readFileSync(headsPlace, 'utf8')).heads) newest = Math.max(newest, seq);
  return newest - copied;
}

async function tellLedger(path: string, { now, by }: PutBack, opened: Opened, lost: number): Promise<void> {
  const db = openDatabase(path);
  try {
    const { manifest, proof } = opened;
    await tellRestored({ db, now, by, manifest, head: proof.head, entriesAfter: lost });
  } finally {
    db.close();
  }
}

/** Heads of entries that are no longer there are kept under another name; those before stay what they were. */
function keepHeads(place: string, seq: number, stamp: string): void {
  if (!existsSync(place)) return;
  const text = readFileSync(place, 'utf8');
  renameSync(place, `${place}.until-${stamp}`);
  writeFileSync(place, headsUpTo(text, seq));
  syncFile(place);
  syncFile(dirname(place));
}
