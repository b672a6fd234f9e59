import { and, eq } from 'drizzle-orm';
import type { ConfigurationVersionId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { configurationWords as words } from '@/lib/wording/configurations';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import { configurationLines, configurationVersions } from '../schema';

interface DiscardConfigurationDraft {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  versionId: ConfigurationVersionId;
  baseRevision: number;
}

/** Takes a draft away, lines and all. What is in force stays as it is; the ledger keeps that there was a draft. */
export async function discardConfigurationDraft(
  request: DiscardConfigurationDraft,
): Promise<Outcome<{ version: number }, { revision: number }>> {
  const { db, now, person, versionId, baseRevision } = request;
  if (!may(person, 'writeConfiguration')) return refused('notPermitted', words.notPermitted(person.name));
  return db.tx(async (write) => {
    const [row] = await write
      .select()
      .from(configurationVersions)
      .where(eq(configurationVersions.id, versionId));
    if (!row) return refused('notFound', words.noSuchVersion);
    if (row.status !== 'draft') return refused('frozen', words.frozen);
    if (row.approvedAt !== null) return refused('frozen', words.waits(row.version, row.inForceFrom ?? ''));
    if (row.revision !== baseRevision) return refused('conflict', words.changed, { revision: row.revision });
    await write.delete(configurationLines).where(eq(configurationLines.versionId, versionId));
    await write
      .delete(configurationVersions)
      .where(and(eq(configurationVersions.id, versionId), eq(configurationVersions.revision, baseRevision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'discard-configuration-draft',
      subjectKind: 'configuration',
      subjectId: row.configurationId,
      detail: { versionId, version: row.version, revision: row.revision },
    });
    return { ok: true, value: { version: row.version } };
  });
}
