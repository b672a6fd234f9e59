import { desc, eq } from 'drizzle-orm';
import {
  type ConfigurationId,
  type ConfigurationVersionId,
  configurationVersionId,
  type NewId,
} from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import type { ConfigurationLine } from '@/lib/sets/configuration';
import { storedStatus } from '@/lib/sets/versionStatus';
import { configurationWords as words } from '@/lib/wording/configurations';
import type { Queries } from '../../client';
import { rowsFromLines } from '../../mappers/configuration';
import type { Person } from '../../queries/people';
import { configurations, configurationVersions } from '../../schema';
import { insertConfigurationVersion } from '../insert-configuration-version';
import { settleDueVersions } from './settle-due';

type VersionRow = typeof configurationVersions.$inferSelect;

/**
 * The versions of a configuration, the newest first, where a next one may be begun: it is in use, and no version waits for
 * its day. Whether a draft is open already is for the caller to judge.
 */
export async function versionsBeforeNext(
  write: Queries,
  { configurationId, now }: { configurationId: ConfigurationId; now: string },
): Promise<Outcome<VersionRow[], never>> {
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
  return newest && storedStatus(newest) === 'approved'
    ? refused('frozen', words.waits(newest.version, newest.inForceFrom ?? ''))
    : { ok: true, value: versions };
}

interface NextVersion {
  configurationId: ConfigurationId;
  /** What it is a copy of but for its lines; none: of nothing. */
  from: VersionRow | undefined;
  version: number;
  lines: readonly ConfigurationLine[];
  note: string | null;
  person: Person;
  newId: NewId;
}

/** Writes a draft of the next version, under the caller's ledger entry. */
export async function insertNextVersion(
  write: Queries,
  { configurationId, from, version, lines, note, person, newId }: NextVersion,
): Promise<ConfigurationVersionId> {
  const id = configurationVersionId.parse(newId('version'));
  await insertConfigurationVersion(write, {
    version: {
      id,
      configurationId,
      version,
      status: 'draft',
      layers: from?.layers ?? [{ layer: 1, name: 'Layer 1' }],
      promises: from?.promises ?? [],
      basketItemId: from?.basketItemId ?? null,
      containerItemId: from?.containerItemId ?? null,
      note,
      draftedBy: person.id,
      revision: 1,
    },
    lines: rowsFromLines(id, [...lines]),
  });
  return id;
}
