import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { openBackup } from '@/db/backup/open';
import { proveCopy } from '@/db/backup/prove';
import { backupWords as words } from '@/lib/wording/backups';
import type { Command } from '../command';
import { placesOf, shown, textOf } from '../places';

/** Reads all of the database, or of a backup as if it had to be put back. Changes nothing. */
export const verify: Command = {
  usage: '[BACKUP [--key FILE]]',
  does: 'reads all of the database, or of a backup, and says whether pages, references and ledger are whole',
  words: [0, 1],
  options: { key: { type: 'string' } },
  async run({ words: [file], options, env, now }) {
    const { database, heads } = placesOf(env);
    const at = now().toISOString();
    const found =
      file === undefined
        ? { of: shown(database), proof: proveCopy({ path: database, now: at, headsText: textOf(heads) }) }
        : {
            of: file,
            proof: await drill(
              resolve(file),
              typeof options.key === 'string' ? options.key : undefined,
              database,
              at,
            ),
          };
    const { faults, ledgerEntries } = found.proof;
    return {
      exit: faults.length === 0 ? 0 : 1,
      lines:
        faults.length === 0 ? [`${found.of}: ${words.whole(ledgerEntries)}`] : [`${found.of}:`, ...faults],
      json: { of: found.of, ...found.proof },
    };
  },
};

/** The backup is opened beside the database, where it would be put back. */
async function drill(path: string, key: string | undefined, database: string, now: string) {
  const to = `${database}.drill-${process.pid}`;
  try {
    const keyFile = key === undefined ? null : String(key);
    return (await openBackup({ path, keyFile, to, now })).proof;
  } finally {
    for (const end of ['', '-wal', '-shm', '-journal']) rmSync(to + end, { force: true });
  }
}
