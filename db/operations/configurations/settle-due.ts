import { and, eq, isNotNull } from 'drizzle-orm';
import { isDue } from '@/lib/sets/versionStatus';
import { wallClock } from '@/lib/theatre/localTime';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { configurationVersions } from '../../schema';

/**
 * Writes down that versions approved for a day have come into force, inside the caller's transaction. Readers know it
 * already (`statusesOn`); writers that rest on it call this first, and so does the start of the program.
 */
export async function settleDueVersions(write: Queries, now: string): Promise<number> {
  const waiting = await write
    .select()
    .from(configurationVersions)
    .where(and(eq(configurationVersions.status, 'draft'), isNotNull(configurationVersions.approvedAt)));
  const due = waiting.filter((row) => isDue(row, wallClock(now).date));
  for (const row of due) {
    const [before] = await write
      .select({ id: configurationVersions.id, version: configurationVersions.version })
      .from(configurationVersions)
      .where(
        and(
          eq(configurationVersions.configurationId, row.configurationId),
          eq(configurationVersions.status, 'inForce'),
        ),
      );
    if (before)
      await write
        .update(configurationVersions)
        .set({ status: 'superseded' })
        .where(eq(configurationVersions.id, before.id));
    await write
      .update(configurationVersions)
      .set({ status: 'inForce', revision: row.revision + 1 })
      .where(eq(configurationVersions.id, row.id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: null,
      action: 'configuration-comes-into-force',
      subjectKind: 'configuration',
      subjectId: row.configurationId,
      detail: {
        versionId: row.id,
        version: row.version,
        from: row.inForceFrom,
        approvedBy: row.approvedBy,
        supersedes: before?.version ?? null,
      },
    });
  }
  return due.length;
}

/** The same as a write of its own, for the start of the program. Answers how many came into force. */
export function settleConfigurations({
  db,
  now,
}: {
  db: Pick<Database, 'tx'>;
  now: string;
}): Promise<number> {
  return db.tx((write) => settleDueVersions(write, now));
}
