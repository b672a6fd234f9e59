import { eq } from 'drizzle-orm';
import {
  type ConfigurationId,
  type ConfigurationVersionId,
  configurationVersionId,
  lineId,
  type NewId,
} from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { lineFromRow } from '../mappers/configuration';
import type { Person } from '../queries/people';
import { configurationLines } from '../schema';
import { insertNextVersion, versionsBeforeNext } from './configurations/next-version';

interface BeginConfigurationDraft {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  configurationId: ConfigurationId;
}

/** Begins the next version of a configuration as a copy of the one in force. Begun twice, it is the same draft. */
export async function beginConfigurationDraft(
  request: BeginConfigurationDraft,
): Promise<Outcome<{ versionId: ConfigurationVersionId; version: number }>> {
  const { db, now, newId, person, configurationId } = request;
  if (!may(person, 'writeConfiguration')) {
    return refused('notPermitted', `${person.name} can’t change a configuration.`);
  }
  return db.tx(async (write) => {
    const versions = await versionsBeforeNext(write, { configurationId, now });
    if (!versions.ok) return versions;
    const [newest] = versions.value;
    if (newest?.status === 'draft') {
      return {
        ok: true,
        value: { versionId: configurationVersionId.parse(newest.id), version: newest.version },
      };
    }
    const from = versions.value.find(({ status }) => status === 'inForce') ?? newest;
    const version = (newest?.version ?? 0) + 1;
    const rows = from
      ? await write.select().from(configurationLines).where(eq(configurationLines.versionId, from.id))
      : [];
    const lines = rows.map((row) => ({ ...lineFromRow(row), id: lineId.parse(newId('line')) }));
    const next = { configurationId, from, version, lines, note: null, person, newId };
    const versionId = await insertNextVersion(write, next);
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'begin-configuration-draft',
      subjectKind: 'configuration',
      subjectId: configurationId,
      detail: { versionId, version, from: from?.version ?? null },
    });
    return { ok: true, value: { versionId, version } };
  });
}
