import { asc, desc, inArray } from 'drizzle-orm';
import type { ConfigurationsFacts } from '@/lib/exchange/plans/configurations';
import { groupBy } from '@/lib/lists/groupBy';
import { statusesOn } from '@/lib/sets/versionStatus';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { versionFromRows } from '../../mappers/configuration';
import { itemFromRow } from '../../mappers/item';
import { configurationLines, configurations, configurationVersions, items, people } from '../../schema';

/** Configurations with the versions that matter to a list: the newest, and what is in force. */
export async function configurationsFacts(read: Queries, now: string): Promise<ConfigurationsFacts> {
  const [heads, all, catalogue, everybody] = await Promise.all([
    read.select().from(configurations).orderBy(asc(configurations.code)),
    read.select().from(configurationVersions).orderBy(desc(configurationVersions.version)),
    read.select().from(items),
    read.select({ id: people.id, name: people.name }).from(people),
  ]);
  const status = statusesOn(all, wallClock(now).date);
  const matter = [...groupBy(all, ({ configurationId: of }) => of).values()].flatMap((versions) =>
    versions.filter(({ id }, at) => at === 0 || status.get(id) === 'inForce'),
  );
  const ids = matter.map(({ id }) => id);
  const lines =
    ids.length === 0
      ? []
      : await read.select().from(configurationLines).where(inArray(configurationLines.versionId, ids));
  const linesOf = groupBy(lines, ({ versionId }) => versionId);
  const versionsOf = groupBy(matter, ({ configurationId: of }) => of);
  const names = new Map(everybody.map(({ id, name }) => [id, name]));
  return {
    items: catalogue.map(itemFromRow),
    configurations: heads.map(({ id, code, name, withdrawnAt, loanId }) => ({
      id,
      code,
      name,
      isWithdrawn: withdrawnAt !== null,
      isOnLoan: loanId !== null,
      versions: (versionsOf.get(id) ?? []).map((row) => ({
        id: row.id,
        version: row.version,
        status: status.get(row.id) ?? 'superseded',
        inForceFrom: row.inForceFrom,
        revision: row.revision,
        savedBy: row.draftedBy === null ? null : (names.get(row.draftedBy) ?? null),
        content: versionFromRows(row, linesOf.get(row.id) ?? []),
      })),
    })),
  };
}
