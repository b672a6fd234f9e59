import { z } from 'zod';

/** Why a backup was made. */
export const backupReason = z.enum(['nightly', 'asked', 'beforeMigration', 'beforeRestore']);
export type BackupReason = z.infer<typeof backupReason>;

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const head = z.strictObject({ seq: z.number().int().positive(), hash: sha256 });

/** What opening a copy and reading all of it found. */
export const backupProof = z.strictObject({
  provedAt: z.iso.datetime(),
  /** In words, each a reason not to rely on the copy; none: it is proven. */
  faults: z.array(z.string()),
  ledgerEntries: z.number().int().nonnegative(),
  head: head.nullable(),
  /** The newest migration in it. */
  schema: z.string(),
});
export type BackupProof = z.infer<typeof backupProof>;

/** What is written beside a backup, in a file of its name and `.json`: what it is, and what proves it. */
export const backupManifest = z.strictObject({
  format: z.literal('kitwright-backup-1'),
  /** Name of the backup's file, in the same folder. */
  file: z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/),
  reason: backupReason,
  madeAt: z.iso.datetime(),
  bytes: z.number().int().positive(),
  sha256,
  /** Sealed with a key: only who holds the other half of it can open the file. */
  isSealed: z.boolean(),
  proof: backupProof,
});
export type BackupManifest = z.infer<typeof backupManifest>;

export const isProven = ({ proof }: Pick<BackupManifest, 'proof'>): boolean => proof.faults.length === 0;

/** `kitwright-20261126T023000Z-nightly`: sorts by time, says why, and is safe on every disk. */
export function backupName(madeAt: string, reason: BackupReason): string {
  const stamp = madeAt.replace(/\.\d+Z$/, 'Z').replaceAll(/[-:]/g, '');
  return `kitwright-${stamp}-${reason}`;
}

/** The newest proven backup of a folder's manifests, in whatever order they come. */
export function newestProven(manifests: readonly BackupManifest[]): BackupManifest | null {
  return manifests
    .filter(isProven)
    .reduce<BackupManifest | null>(
      (newest, one) => (newest === null || one.madeAt > newest.madeAt ? one : newest),
      null,
    );
}
