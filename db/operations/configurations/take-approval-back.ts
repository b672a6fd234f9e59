import { eq } from 'drizzle-orm';
import type { ConfigurationVersionId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { storedStatus } from '@/lib/sets/versionStatus';
import { configurationWords as words } from '@/lib/wording/configurations';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { configurationVersions } from '../../schema';
import { settleDueVersions } from './settle-due';

interface TakeApprovalBack {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  versionId: ConfigurationVersionId;
  baseRevision: number;
}

/** Before its day, anybody who may approve a version may take its approval back: it is a draft again and can be changed. */
export async function takeApprovalBack(
  request: TakeApprovalBack,
): Promise<Outcome<{ revision: number }, { revision: number }>> {
  const { db, now, person, versionId, baseRevision } = request;
  if (!may(person, 'approveConfiguration')) return refused('notPermitted', words.notPermitted(person.name));
  return db.tx(async (write) => {
    await settleDueVersions(write, now);
    const [row] = await write
      .select()
      .from(configurationVersions)
      .where(eq(configurationVersions.id, versionId));
    if (!row) return refused('notFound', words.noSuchVersion);
    if (storedStatus(row) !== 'approved') return refused('frozen', words.notWaiting);
    if (row.revision !== baseRevision) return refused('conflict', words.changed, { revision: row.revision });
    const revision = row.revision + 1;
    await write
      .update(configurationVersions)
      .set({ approvedBy: null, approvedAt: null, inForceFrom: null, revision })
      .where(eq(configurationVersions.id, versionId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'take-configuration-approval-back',
      subjectKind: 'configuration',
      subjectId: row.configurationId,
      detail: { versionId, version: row.version, approvedBy: row.approvedBy, from: row.inForceFrom },
    });
    return { ok: true, value: { revision } };
  });
}
