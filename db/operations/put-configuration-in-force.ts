import { and, eq } from 'drizzle-orm';
import type { ConfigurationVersionId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { checkVersion } from '@/lib/sets/checkVersion';
import type { Database, Queries } from '../client';
import { appendLedger } from '../ledger';
import { versionFromRows } from '../mappers/configuration';
import { itemFromRow } from '../mappers/item';
import type { Person } from '../queries/people';
import { configurationLines, configurationVersions, items, ledger } from '../schema';

interface PutConfigurationInForce {
  db: Pick<Database, 'tx'>;
  now: string;
  today: PlainDate;
  person: Person;
  versionId: ConfigurationVersionId;
  baseRevision: number;
}

/**
 * Puts a draft in force and supersedes the version before it. By another person than the one who drafted it, and only
 * when nothing is wrong with it. From then on it never changes. Sets follow it when they are next refitted, not before.
 */
export async function putConfigurationInForce(
  request: PutConfigurationInForce,
): Promise<Outcome<{ version: number }, { revision: number }>> {
  const { db, now, today, person, versionId, baseRevision } = request;
  if (!may(person.role, 'approveConfiguration')) {
    return refused('notPermitted', `${person.name} can’t put a configuration in force.`);
  }
  return db.tx(async (write) => {
    const [row] = await write
      .select()
      .from(configurationVersions)
      .where(eq(configurationVersions.id, versionId));
    if (!row) return refused('notFound', 'There is no such version.');
    if (row.status !== 'draft') return refused('frozen', `Version ${row.version} is not a draft any more.`);
    if (row.revision !== baseRevision) {
      return refused('conflict', 'The draft was changed since you opened it. Look at it again.', {
        revision: row.revision,
      });
    }
    if (row.draftedBy === person.id || (await wroteIn(write, row.configurationId, versionId, person))) {
      return refused(
        'notPermitted',
        'A version is put in force by another person than the one who drafted it.',
      );
    }
    const lines = await write
      .select()
      .from(configurationLines)
      .where(eq(configurationLines.versionId, versionId));
    const catalogue = (await write.select().from(items)).map(itemFromRow);
    const problems = checkVersion(
      versionFromRows(row, lines),
      new Map(catalogue.map((item) => [item.id, item])),
    );
    if (problems.length > 0) return refusedFor(problems);
    await write
      .update(configurationVersions)
      .set({ status: 'superseded', revision: row.revision + 1 })
      .where(
        and(
          eq(configurationVersions.configurationId, row.configurationId),
          eq(configurationVersions.status, 'inForce'),
        ),
      );
    await write
      .update(configurationVersions)
      .set({ status: 'inForce', approvedBy: person.id, inForceFrom: today, revision: row.revision + 1 })
      .where(eq(configurationVersions.id, versionId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'put-configuration-in-force',
      subjectKind: 'configuration',
      subjectId: row.configurationId,
      detail: { versionId, version: row.version },
    });
    return { ok: true, value: { version: row.version } };
  });
}

/** Whether a person ever saved this draft: whoever wrote some of it does not approve the rest. */
async function wroteIn(
  write: Queries,
  configuration: string,
  versionId: ConfigurationVersionId,
  person: Person,
): Promise<boolean> {
  const entries = await write
    .select({ detail: ledger.detail })
    .from(ledger)
    .where(
      and(
        eq(ledger.subjectKind, 'configuration'),
        eq(ledger.subjectId, configuration),
        eq(ledger.personId, person.id),
      ),
    );
  return entries.some(({ detail }) => (detail as { versionId?: string }).versionId === versionId);
}
