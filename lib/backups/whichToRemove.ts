import { type BackupManifest, isProven } from './manifest';

interface Keep {
  /** So many of the newest nights. */
  nights: number;
  /** The first of so many of the newest months, besides. */
  months: number;
}

/**
 * Which backups of the nights may be deleted: those beyond what is kept. What a person asked for, or what was made before a
 * change, is never among them, nor is anything while no newer backup is proven: an unproven one counts for nothing.
 */
export function whichToRemove(
  manifests: readonly BackupManifest[],
  { nights, months }: Keep,
): BackupManifest[] {
  const nightly = manifests
    .filter(({ reason }) => reason === 'nightly')
    .sort((one, other) => (one.madeAt < other.madeAt ? 1 : -1));
  const proven = nightly.filter(isProven);
  const kept = new Set(proven.slice(0, Math.max(1, nights)));
  const firstOfMonth = new Map<string, BackupManifest>();
  for (const one of proven) firstOfMonth.set(one.madeAt.slice(0, 7), one);
  for (const one of [...firstOfMonth.values()].slice(0, months)) kept.add(one);
  const newest = proven[0];
  return nightly.filter((one) => !kept.has(one) && newest !== undefined && one.madeAt < newest.madeAt);
}
