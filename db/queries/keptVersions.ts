import { asc, inArray } from 'drizzle-orm';
import { type ConfigurationVersionId, configurationVersionId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import type { ConfigurationVersion } from '@/lib/sets/configuration';
import type { Database } from '../client';
import { versionFromRows } from '../mappers/configuration';
import { configurationLines, configurationVersions } from '../schema';

type Reading = Pick<Database, 'read'>;
type Kept = Map<ConfigurationVersionId, ConfigurationVersion>;

const kept = new WeakMap<Database['read'], Kept>();

/**
 * Versions in force or superseded, with their lines, parsed once: they never change (the database sees to it; only `status`
 * goes from in force to superseded, which is looked up afresh). The same objects come back each time, so that what is
 * remembered about a promised construct stays good. Drafts are not among them.
 */
export async function keptVersions({
  read,
}: Reading): Promise<ReadonlyMap<ConfigurationVersionId, ConfigurationVersion>> {
  const known: Kept = kept.get(read) ?? new Map();
  kept.set(read, known);
  const heads = (
    await read
      .select({ id: configurationVersions.id, status: configurationVersions.status })
      .from(configurationVersions)
  ).filter(({ status }) => status !== 'draft');
  const there = new Map(heads.map(({ id, status }) => [configurationVersionId.parse(id), status]));
  for (const [id, version] of known) {
    const status = there.get(id);
    if (status === undefined) known.delete(id);
    else if (status !== version.status && status === 'superseded' && version.status === 'inForce')
      known.set(id, { ...version, status });
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
    known.set(configurationVersionId.parse(row.id), versionFromRows(row, linesOf.get(row.id) ?? []));
  return known;
}
