import { asc, inArray } from 'drizzle-orm';
import { type ConfigurationVersionId, configurationVersionId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import type { ConfigurationVersion } from '@/lib/sets/configuration';
import { statusesOn } from '@/lib/sets/versionStatus';
import type { Database } from '../client';
import { versionFromRows } from '../mappers/configuration';
import { mayRead, type Reading } from '../reader';
import { configurationLines, configurationVersions } from '../schema';
import { hospitalToday } from './today';

type Kept = Map<ConfigurationVersionId, ConfigurationVersion>;

/** What is kept of a version's life. */
export const LIFE = {
  id: configurationVersions.id,
  configurationId: configurationVersions.configurationId,
  status: configurationVersions.status,
  approvedAt: configurationVersions.approvedAt,
  inForceFrom: configurationVersions.inForceFrom,
};

const kept = new WeakMap<Database['read'], Kept>();

/**
 * Versions in force or superseded, with their lines, parsed once: they never change (the database sees to it; only `status`
 * goes from in force to superseded, which is looked up afresh, and by the day). The same objects come back each time, so that what is
 * remembered about a promised construct stays good. Drafts, and versions that wait for
 * their day, are not among them.
 */
export async function keptVersions(
  db: Reading,
): Promise<ReadonlyMap<ConfigurationVersionId, ConfigurationVersion>> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const known: Kept = kept.get(read) ?? new Map();
  kept.set(read, known);
  const statuses = statusesOn(await read.select(LIFE).from(configurationVersions), await hospitalToday(read));
  const there = new Map(
    [...statuses].flatMap(([id, status]) =>
      status === 'draft' || status === 'approved'
        ? []
        : [[configurationVersionId.parse(id), status] as const],
    ),
  );
  for (const [id, version] of known) {
    const status = there.get(id);
    if (status === undefined) known.delete(id);
    else if (status !== version.status) known.set(id, { ...version, status } as ConfigurationVersion);
  }
  const missing = [...there.keys()].filter((id) => !known.has(id));
  if (missing.length === 0) return known;
  const [rows, lines] = await Promise.all([
    read.select().from(configurationVersions).where(inArray(configurationVersions.id, missing)),
    read
      .select()
      .from(configurationLines)
      .where(inArray(configurationLines.versionId, missing))
      .orderBy(asc(configurationLines.layer), asc(configurationLines.row), asc(configurationLines.slot)),
  ]);
  const linesOf = groupBy(lines, ({ versionId }) => versionId);
  for (const row of rows)
    known.set(
      configurationVersionId.parse(row.id),
      versionFromRows(row, linesOf.get(row.id) ?? [], statuses.get(row.id)),
    );
  return known;
}
