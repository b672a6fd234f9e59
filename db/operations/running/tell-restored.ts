import type { BackupManifest } from '@/lib/backups/manifest';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';

interface TellRestored {
  db: Pick<Database, 'tx'>;
  now: string;
  /** Who put it back, as the machine knows them: nobody is signed in where no server runs. */
  by: string;
  /** `null`: the backup had no description. */
  manifest: BackupManifest | null;
  head: { seq: number; hash: string } | null;
  /** Entries known to have been written after it. */
  entriesAfter: number;
}

/** Enters in the ledger that a backup was put back, which, and how many later entries are known to be missing. */
export async function tellRestored({
  db,
  now,
  by,
  manifest,
  head,
  entriesAfter,
}: TellRestored): Promise<void> {
  await db.tx((write) =>
    appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: null,
      action: 'restore-backup',
      subjectKind: 'hospital',
      subjectId: 'database',
      detail: { by, file: manifest?.file ?? null, madeAt: manifest?.madeAt ?? null, head, entriesAfter },
    }),
  );
}
