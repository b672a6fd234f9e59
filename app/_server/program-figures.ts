import 'server-only';
import { dirname, join, resolve } from 'node:path';
import { backupsIn } from '@/db/backup/read';
import { newestEntry } from '@/db/queries/ledgerHead';
import { newestProven } from '@/lib/backups/manifest';
import { now } from './clock';
import { database } from './database';

/** What the program alone knows of its figures: how long its ledger is, and how old its newest proven backup. */
export async function programFigures(): Promise<{ ledgerEntries: number; backupAgeSeconds: number | null }> {
  const path = resolve(process.env.KITWRIGHT_DB ?? 'var/kitwright.sqlite');
  const backups = resolve(process.env.KITWRIGHT_BACKUPS?.trim() || join(dirname(path), 'backups'));
  const newest = newestProven(backupsIn(backups));
  const head = await newestEntry(database());
  return {
    ledgerEntries: head?.seq ?? 0,
    backupAgeSeconds: newest ? (Date.parse(now()) - Date.parse(newest.madeAt)) / 1000 : null,
  };
}
