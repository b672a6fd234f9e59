import { eq } from 'drizzle-orm';
import type { Queries } from '../client';
import { configurationLines, configurationVersions } from '../schema';

type VersionRow = typeof configurationVersions.$inferInsert;
type LineRow = typeof configurationLines.$inferInsert;

/** SQLite binds at most 32,766 values in one statement. */
const LINES_AT_A_TIME = 400;

/**
 * Writes a whole version with its lines, inside the caller's transaction and under the caller's ledger entry.
 * The database lets lines in only while a version is a draft, so it is one until its lines are there.
 */
export async function insertConfigurationVersion(
  write: Queries,
  { version, lines }: { version: VersionRow & { id: string }; lines: Omit<LineRow, 'versionId'>[] },
): Promise<void> {
  await write.insert(configurationVersions).values({ ...version, status: 'draft' });
  for (let from = 0; from < lines.length; from += LINES_AT_A_TIME) {
    const rows = lines
      .slice(from, from + LINES_AT_A_TIME)
      .map((line) => ({ ...line, versionId: version.id }));
    await write.insert(configurationLines).values(rows);
  }
  if (version.status === 'draft') return;
  await write
    .update(configurationVersions)
    .set({ status: version.status })
    .where(eq(configurationVersions.id, version.id));
}
