import type { BackupReason } from '../backups/manifest';
import { listWords } from './numbers';

const figure = (count: number) => count.toLocaleString('en-GB');
const megabytes = (bytes: number) => `${figure(Math.max(1, Math.round(bytes / 1e6)))} MB`;
const migrations = (names: readonly string[]) => listWords(names.map((name) => name.replace(/\.sql$/, '')));

/** What is said of backups, on the command line and on screen. */
export const backupWords = {
  reason: {
    nightly: 'made by night',
    asked: 'asked for',
    beforeMigration: 'before the database was brought up to date',
    beforeRestore: 'before a backup was put back',
  } satisfies Record<BackupReason, string>,
  secondPlace: 'the second place',
  newer: (names: readonly string[]) =>
    `It was made by a newer Kitwright: it has ${migrations(names)}, which this one does not know.`,
  otherMigrations: (names: readonly string[]) =>
    `It was made with another text of ${migrations(names)} than this Kitwright has.`,
  noDatabase: (path: string) => `There is no database at ${path}.`,
  noBackup: (path: string) => `There is no backup at ${path}: “backups” lists those there are.`,
  noRoom: (folder: string, needs: number, free: number) =>
    `The disk that holds ${folder} is too full for a backup: it needs about ${megabytes(needs)}, and ${megabytes(free)} are free.`,
  made: (path: string, bytes: number) => `Backup ${path} is made (${megabytes(bytes)}).`,
  proven: (entries: number) =>
    `It was opened and read whole: pages, references and ${entries === 1 ? '1 ledger entry' : `${figure(entries)} ledger entries`} are as they were written.`,
  notProven: 'It is not proven: do not rely on it. It is kept so that somebody can look at it.',
  wrongHash: (file: string) => `${file} is not as it was when it was made: its content changed since.`,
  wrongDescription: (file: string) =>
    `${file} is not as it was written: nothing proves the backup it belongs to.`,
  whole: (entries: number) =>
    `pages, references and ${entries === 1 ? '1 ledger entry' : `${figure(entries)} ledger entries`} are as they were written.`,
  /** Of rows that nothing ever changes. */
  altered: (table: string, rows: number, backup: string) =>
    `${rows === 1 ? '1 row' : `${figure(rows)} rows`} of ${table}, which nothing ever changes, ${rows === 1 ? 'is' : 'are'} not as in the proven backup ${backup}: the disk altered ${rows === 1 ? 'it' : 'them'}, or somebody did.`,
  compared: (backup: string) =>
    `What is written once and for all is as in the proven backup ${backup}, as far as that goes.`,
  notCompared: {
    none: 'It was compared with no backup: none is proven.',
    sealed: (backup: string) =>
      `It was compared with no backup: ${backup} is sealed (name the file with its key by --key).`,
    another: (backup: string) =>
      `It was compared with no backup: ${backup} is of another hospital, or of what was there before one was put back.`,
  },
  removed: (count: number) =>
    `${count === 1 ? '1 backup' : `${count} backups`} of old nights ${count === 1 ? 'was' : 'were'} deleted.`,
  none: (folder: string) => `There is no backup in ${folder}.`,
  noRecipient:
    'That is not the public half of a key: it begins with age1 (kitwright key new FILE makes one).',
  noReason: 'Give no reason, or one of: asked, nightly.',
  sayYes: (database: string, file: string) =>
    `This puts ${file} in place of ${database}; what is there now is kept beside it. Say --yes to do it.`,
  keyMade: (file: string, recipient: string) => [
    `${file} holds the key: whoever has it can open every backup sealed for it, and without it nobody can.`,
    'Put it in a safe, not on this machine.',
    `Its public half, for KITWRIGHT_BACKUP_KEY: ${recipient}`,
  ],
  noManifest: (file: string) =>
    `${file} has no description beside it (${file}.json): when and of what it was made is not known.`,
  notMigrated: (database: string, faults: readonly string[]) =>
    `${database} was not brought up to date, as no proven backup could be made of it first: ${faults.join(' ')} Put that right (kitwright doctor says more) and start again.`,
  unreadable: (said: string) => `It cannot be read as a database: ${said}.`,
  sealed: (file: string) => `${file} is sealed: name the file with its key (--key).`,
  wrongKey: (file: string) => `The key does not open ${file}.`,
  noKeyIn: (file: string) => `${file} holds no key.`,
  keyExists: (file: string) => `${file} exists already: a key is never written over.`,
  inUse: (path: string) => `The database ${path} is in use: stop the server first. Nothing was changed.`,
  notPutBack: 'Nothing was put back.',
  putBack: (path: string, aside: string | null) =>
    aside === null
      ? `${path} is as in the backup.`
      : `${path} is as in the backup; what was there is kept as ${aside}.`,
  lost: (entries: number) =>
    entries === 0
      ? 'No ledger entry is known to have been written after it.'
      : `${entries === 1 ? '1 ledger entry is' : `${figure(entries)} ledger entries are`} known to have been written after it and ${entries === 1 ? 'is' : 'are'} not in it: what was done since must be entered again.`,
};
