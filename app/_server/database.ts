import 'server-only';
import { type Database, openDatabase } from '@/db/client';
import { headsPath } from '@/db/ledgerHeadsFile';
import { type LedgerWatch, ledgerWatch } from '@/db/ledgerWatch';
import { now } from './clock';

const kept = globalThis as typeof globalThis & {
  kitwrightDatabase?: Database;
  kitwrightLedgerWatch?: LedgerWatch;
};

/** The one open database of this process. Opened on first use; the file is made and migrated before the server starts. */
export function database(): Database {
  kept.kitwrightDatabase ??= open(process.env.KITWRIGHT_DB ?? 'var/kitwright.sqlite');
  return kept.kitwrightDatabase;
}

/** Who follows the ledger of that database while the process runs. */
export function watchOfLedger(): LedgerWatch | null {
  database();
  return kept.kitwrightLedgerWatch ?? null;
}

function open(path: string): Database {
  const db = openDatabase(path);
  const watch = ledgerWatch({ db, place: headsPath(path, process.env.KITWRIGHT_HEADS), now });
  watch.begin();
  process.once('exit', () => watch.end());
  kept.kitwrightLedgerWatch = watch;
  return db;
}
