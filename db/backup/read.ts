import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type BackupManifest, backupManifest } from '@/lib/backups/manifest';
import { sha256 } from '../ledger';

/** What a backup says of itself, or `null` where its description is not there, cannot be read or was changed since. */
export function readManifest(path: string): BackupManifest | null {
  try {
    const { digest, ...said } = JSON.parse(readFileSync(`${path}.json`, 'utf8'));
    // those of the first release have none
    if (digest !== undefined && digest !== sha256(JSON.stringify(said))) return null;
    return backupManifest.parse(said);
  } catch {
    return null;
  }
}

/** The text of a description: what it says, and a digest of that, by which a change shows. */
export const manifestText = (manifest: BackupManifest): string =>
  `${JSON.stringify({ ...manifest, digest: sha256(JSON.stringify(manifest)) }, null, 2)}\n`;

/** Whether a backup has a description that is not as it was written: then nothing proves the backup. */
export const isMisdescribed = (path: string): boolean =>
  existsSync(`${path}.json`) && readManifest(path) === null;

/** The backups of a folder that are there with their descriptions, the newest first. A folder that is not there has none. */
export function backupsIn(folder: string): BackupManifest[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith('.sqlite') || name.endsWith('.sqlite.age'))
    .flatMap((name) => readManifest(join(folder, name)) ?? [])
    .sort((one, other) => (one.madeAt < other.madeAt ? 1 : -1));
}
