import { and, asc, eq } from 'drizzle-orm';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { statusesOn } from '@/lib/sets/versionStatus';
import type { Queries } from '../../client';
import { configurationLines, configurationVersions } from '../../schema';
import { digestOf } from './digest';
import { fitBasisDigest } from './fitDigests';

/** All that a version asks for and promises: another word in the draft is another digest. */
export async function versionContentDigest(read: Queries, versionId: string): Promise<string | null> {
  const [row] = await read
    .select()
    .from(configurationVersions)
    .where(eq(configurationVersions.id, versionId));
  if (!row) return null;
  const lines = await read
    .select()
    .from(configurationLines)
    .where(eq(configurationLines.versionId, versionId))
    .orderBy(asc(configurationLines.layer), asc(configurationLines.row), asc(configurationLines.slot));
  return digestOf([
    row.layers,
    row.promises,
    row.basketItemId,
    row.containerItemId,
    row.note,
    lines.map(({ id, versionId: _version, ...line }) => [id, Object.values(line)]),
  ]);
}

/** What it would replace, and every fit rule in force: what a trial of it was made against. */
export async function versionBasisDigest(
  read: Queries,
  configurationId: string,
  today: PlainDate,
): Promise<string> {
  const versions = await read
    .select()
    .from(configurationVersions)
    .where(and(eq(configurationVersions.configurationId, configurationId)));
  const statuses = statusesOn(versions, today);
  const inForce = versions.find(({ id }) => statuses.get(id) === 'inForce');
  return digestOf([inForce?.id ?? null, await fitBasisDigest(read, today)]);
}
