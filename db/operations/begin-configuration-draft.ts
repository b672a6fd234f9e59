import { desc, eq } from 'drizzle-orm';
import {
  type ConfigurationId,
  type ConfigurationVersionId,
  configurationVersionId,
  lineId,
  type NewId,
} from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { storedStatus } from '@/lib/sets/versionStatus';
import { configurationWords as words } from '@/lib/wording/configurations';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { lineFromRow, rowsFromLines } from '../mappers/configuration';
import type { Person } from '../queries/people';
import { configurationLines, configurations, configurationVersions } from '../schema';
import { settleDueVersions } from './configurations/settle-due';

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
  if (!may(person.role, 'writeConfiguration')) {
    return refused('notPermitted', `${person.name} can’t change a configuration.`);
  }
  return db.tx(async (write) => {
    const [head] = await write.select().from(configurations).where(eq(configurations.id, configurationId));
    if (!head) return refused('notFound', 'There is no such configuration.');
    if (head.withdrawnAt) return refused('frozen', words.outOfUse(head.name));
    await settleDueVersions(write, now);
    const versions = await write
      .select()
      .from(configurationVersions)
      .where(eq(configurationVersions.configurationId, configurationId))
      .orderBy(desc(configurationVersions.version));
    const [newest] = versions;
    if (newest && storedStatus(newest) === 'approved')
      return refused('frozen', words.waits(newest.version, newest.inForceFrom ?? ''));
    if (newest?.status === 'draft') {
      return {
        ok: true,
        value: { versionId: configurationVersionId.parse(newest.id), version: newest.version },
      };
    }
    const from = versions.find(({ status }) => status === 'inForce') ?? newest;
    const versionId = configurationVersionId.parse(newId('version'));
    const version = (newest?.version ?? 0) + 1;
    await write.insert(configurationVersions).values({
      id: versionId,
      configurationId,
      version,
      status: 'draft',
      layers: from?.layers ?? [{ layer: 1, name: 'Layer 1' }],
      promises: from?.promises ?? [],
      basketItemId: from?.basketItemId ?? null,
      containerItemId: from?.containerItemId ?? null,
      note: null,
      draftedBy: person.id,
      revision: 1,
    });
    if (from) {
      const rows = await write
        .select()
        .from(configurationLines)
        .where(eq(configurationLines.versionId, from.id));
      const lines = rows.map((row) => ({ ...lineFromRow(row), id: lineId.parse(newId('line')) }));
      if (lines.length > 0) await write.insert(configurationLines).values(rowsFromLines(versionId, lines));
    }
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
