import { eq } from 'drizzle-orm';
import type { SetsFacts } from '@/lib/exchange/plans/sets';
import { statusesOn } from '@/lib/sets/versionStatus';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { configurations, configurationVersions, places, sets } from '../../schema';

/** Sets, what they may be of, and where they may be. */
export async function setsFacts(read: Queries, now: string): Promise<SetsFacts> {
  const [rows, kinds, versions, there] = await Promise.all([
    read
      .select({
        id: sets.id,
        code: sets.code,
        configuration: configurations.code,
        owner: sets.owner,
        placeName: places.name,
        revision: sets.revision,
      })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
      .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
      .leftJoin(places, eq(places.id, sets.placeId)),
    read.select().from(configurations),
    read
      .select({
        id: configurationVersions.id,
        configurationId: configurationVersions.configurationId,
        status: configurationVersions.status,
        approvedAt: configurationVersions.approvedAt,
        inForceFrom: configurationVersions.inForceFrom,
      })
      .from(configurationVersions),
    read.select().from(places),
  ]);
  const status = statusesOn(versions, wallClock(now).date);
  const inForce = new Set(
    versions.flatMap(({ id, configurationId }) => (status.get(id) === 'inForce' ? [configurationId] : [])),
  );
  return {
    sets: rows.map((row) => ({ ...row, owner: row.owner === 'loan' ? 'loan' : 'ours' })),
    configurations: kinds.map(({ id, code, withdrawnAt, loanId }) => ({
      id,
      code,
      isWithdrawn: withdrawnAt !== null,
      isOnLoan: loanId !== null,
      isInForce: inForce.has(id),
    })),
    places: there.filter(({ withdrawnAt }) => withdrawnAt === null),
  };
}
