import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { BackupManifest } from '@/lib/backups/manifest';
import { whichToRemove } from '@/lib/backups/whichToRemove';
import { backupsIn } from './read';

/** Deletes the backups of old nights; answers which. */
export function removeOldNights(folder: string, keep: { nights: number; months: number }): BackupManifest[] {
  const old = whichToRemove(backupsIn(folder), keep);
  for (const { file } of old)
    for (const end of ['', '.json']) rmSync(join(folder, file + end), { force: true });
  return old;
}
