import { existsSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { rowsAltered } from '@/db/backup/compare';
import { sha256OfFile } from '@/db/backup/make';
import { openBackup } from '@/db/backup/open';
import { proveCopy } from '@/db/backup/prove';
import { backupsIn } from '@/db/backup/read';
import { newestProven } from '@/lib/backups/manifest';
import { backupWords as words } from '@/lib/wording/backups';
import { CannotDo, type Command, type Given } from '../command';
import { placesOf, shown, textOf } from '../places';

/** Reads all of the database, or of a backup as if it had to be put back. Changes nothing. */
export const verify: Command = {
  usage: '[BACKUP] [--key FILE]',
  does: 'reads all of the database, or of a backup, and says whether pages, references and ledger are whole',
  words: [0, 1],
  options: { key: { type: 'string' } },
  async run(given) {
    const { of, proof, compared } = await found(given);
    const faults = [...proof.faults, ...compared.faults];
    return {
      exit: faults.length === 0 ? 0 : 1,
      lines: [
        ...(faults.length === 0 ? [`${of}: ${words.whole(proof.ledgerEntries)}`] : [`${of}:`, ...faults]),
        ...compared.said,
      ],
      json: { of, ...proof, faults, compared: compared.said },
    };
  },
};

async function found(given: Given) {
  const {
    words: [file],
    options,
    env,
    now,
  } = given;
  const { database, heads, backups } = placesOf(env);
  const at = now().toISOString();
  const key = typeof options.key === 'string' ? options.key : null;
  if (file !== undefined) {
    const { proof } = await opened(resolve(file), key, database, at, () => null);
    return { of: file, proof, compared: { faults: [], said: [] } };
  }
  if (!existsSync(database)) throw new CannotDo(words.noDatabase(shown(database)));
  const proof = proveCopy({ path: database, now: at, headsText: textOf(heads), areHeadsLookedFor: true });
  return { of: shown(database), proof, compared: await comparedWith(backups, key, database, at) };
}

/** The database beside its newest proven backup: what is written once and for all must be in both alike. */
async function comparedWith(folder: string, key: string | null, database: string, at: string) {
  const newest = newestProven(backupsIn(folder));
  if (newest === null) return { faults: [], said: [words.notCompared.none] };
  const { file, isSealed, sha256 } = newest;
  const path = join(folder, file);
  if (isSealed && key === null) return { faults: [], said: [words.notCompared.sealed(file)] };
  // a backup that is damaged itself says nothing of the database
  if ((await sha256OfFile(path)) !== sha256) return { faults: [], said: [words.wrongHash(file)] };
  const altered = isSealed
    ? (await opened(path, key, database, at, (copy) => rowsAltered(database, copy))).seen
    : rowsAltered(database, path);
  if (altered === null) return { faults: [], said: [words.notCompared.another(file)] };
  return {
    faults: altered.map(({ table, rows }) => words.altered(table, rows, file)),
    said: altered.length === 0 ? [words.compared(file)] : [],
  };
}

/** The backup is opened beside the database, where it would be put back. */
async function opened<T>(
  path: string,
  keyFile: string | null,
  database: string,
  now: string,
  look: (copy: string) => T,
) {
  const to = `${database}.drill-${process.pid}`;
  try {
    const { proof } = await openBackup({ path, keyFile, to, now });
    return { proof, seen: proof.faults.length === 0 ? look(to) : null };
  } finally {
    for (const end of ['', '-wal', '-shm', '-journal']) rmSync(to + end, { force: true });
  }
}
