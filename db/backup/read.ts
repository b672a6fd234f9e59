import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type BackupManifest, backupManifest } from '@/lib/backups/manifest';

/** What a backup says of itself, or `null` where its description is not there or cannot be read. */
export function readManifest(path: string): BackupManifest | null {
  try {
    return backupManifest.parse(JSON.parse(readFileSync(`${path}.json`, 'utf8')));
  } catch {
    return null;
  }
}

/** The backups of a folder that are there with their descriptions, the newest first. A folder that is not there has none. */
export function backupsIn(folder: string): BackupManifest[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith('.sqlite') || name.endsWith('.sqlite.age'))
    .flatMap((name) => readManifest(join(folder, name)) ?? [])
    .sort((one, other) => (one.madeAt < other.madeAt ? 1 : -1));
}
