import type { PlainDate } from '../quantities/plainDate';
import type { ConfigurationVersion } from './configuration';

/** What is kept of a version's life. */
export interface VersionLife {
  id: string;
  configurationId: string;
  status: string;
  approvedAt: string | null;
  inForceFrom: string | null;
}

/**
 * Where each version is in its life on a day. A version approved for a day that has come is in force, and the one before it
 * superseded, whether or not anybody has written that down since: nothing has to run at midnight. `versions` are all those of
 * the configurations asked about that are not superseded; more do no harm.
 */
export function statusesOn(
  versions: readonly VersionLife[],
  today: PlainDate,
): Map<string, ConfigurationVersion['status']> {
  const due = new Set(
    versions.filter((one) => isDue(one, today)).map(({ configurationId }) => configurationId),
  );
  return new Map(
    versions.map((one) => {
      if (isDue(one, today)) return [one.id, 'inForce'];
      if (one.status === 'inForce' && due.has(one.configurationId)) return [one.id, 'superseded'];
      return [one.id, storedStatus(one)];
    }),
  );
}

/** Approved, its day has come, and nobody has settled it yet. */
export function isDue(version: VersionLife, today: PlainDate): boolean {
  const { inForceFrom } = version;
  return storedStatus(version) === 'approved' && inForceFrom !== null && inForceFrom <= today;
}

/** A draft with an approval waits for its day. */
export function storedStatus({
  status,
  approvedAt,
}: Pick<VersionLife, 'status' | 'approvedAt'>): ConfigurationVersion['status'] {
  if (status === 'draft') return approvedAt === null ? 'draft' : 'approved';
  return status === 'inForce' ? 'inForce' : 'superseded';
}
