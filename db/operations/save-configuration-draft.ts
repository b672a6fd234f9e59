import { and, eq, inArray, ne } from 'drizzle-orm';
import { z } from 'zod';
import { type ConfigurationVersionId, itemId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import type { VersionContent } from '@/lib/sets/checkVersion';
import { checkVersion, NEVER_SAVED } from '@/lib/sets/checkVersion';
import { configurationLine, layerInfo, promisedConstruct } from '@/lib/sets/configuration';
import { configurationWords as words } from '@/lib/wording/configurations';
import type { Database, Queries } from '../client';
import { appendLedger } from '../ledger';
import { rowsFromLines, versionFromRows } from '../mappers/configuration';
import { itemFromRow } from '../mappers/item';
import type { Person } from '../queries/people';
import { configurationLines, configurationVersions, items } from '../schema';

/** A draft as it comes from the editor: the whole of it, so that nothing is half saved. */
export const configurationDraftEntry = z.strictObject({
  layers: z.array(layerInfo).min(1).max(12),
  lines: z.array(configurationLine).max(600),
  promises: z.array(promisedConstruct).max(12),
  basketItemId: itemId.nullable(),
  containerItemId: itemId.nullable(),
  note: z.string().trim().max(500).nullable(),
});

interface SaveConfigurationDraft {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  versionId: ConfigurationVersionId;
  baseRevision: number;
  /** As sent from outside; parsed here against `configurationDraftEntry`. */
  entry: unknown;
}

/**
 * Replaces a draft by what the editor holds. Items that are withdrawn meanwhile, a missing layer or rack, are allowed in
 * a draft and refused when it is put in force. A draft that someone else saved meanwhile is not overwritten.
 */
export async function saveConfigurationDraft(
  request: SaveConfigurationDraft,
): Promise<Outcome<{ revision: number }, { revision: number; content: VersionContent }>> {
  const { db, now, person, versionId, baseRevision } = request;
  if (!may(person, 'writeConfiguration')) {
    return refused('notPermitted', `${person.name} can’t change a configuration.`);
  }
  const parsed = configurationDraftEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { lines, ...head } = parsed.data;
  return db.tx(async (write) => {
    const [row] = await write
      .select()
      .from(configurationVersions)
      .where(eq(configurationVersions.id, versionId));
    if (!row) return refused('notFound', 'There is no such version.');
    if (row.status !== 'draft')
      return refused('frozen', 'A version in force never changes; begin a new draft.');
    if (row.approvedAt !== null) return refused('frozen', words.waits(row.version, row.inForceFrom ?? ''));
    if (row.revision !== baseRevision) {
      const there = await write
        .select()
        .from(configurationLines)
        .where(eq(configurationLines.versionId, versionId));
      return refused('conflict', 'Somebody else saved this draft meanwhile. Nothing was saved.', {
        revision: row.revision,
        content: versionFromRows(row, there),
      });
    }
    const catalogue = (await write.select().from(items)).map(itemFromRow);
    const problems = [
      ...checkVersion(parsed.data, new Map(catalogue.map((item) => [item.id, item]))).filter(({ code }) =>
        NEVER_SAVED.has(code),
      ),
      ...(await linesOfOthers(write, versionId, lines)),
    ];
    if (problems.length > 0) return refusedFor(problems);
    const revision = row.revision + 1;
    await write
      .update(configurationVersions)
      .set({ ...head, draftedBy: person.id, revision })
      .where(and(eq(configurationVersions.id, versionId), eq(configurationVersions.revision, baseRevision)));
    await write.delete(configurationLines).where(eq(configurationLines.versionId, versionId));
    if (lines.length > 0) await write.insert(configurationLines).values(rowsFromLines(versionId, lines));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'save-configuration-draft',
      subjectKind: 'configuration',
      subjectId: row.configurationId,
      detail: { versionId, revision, lines: lines.length },
    });
    return { ok: true, value: { revision } };
  });
}

/** A line's id is its own for good: one that another version has is never taken over. */
async function linesOfOthers(
  write: Queries,
  versionId: ConfigurationVersionId,
  lines: readonly { id: string }[],
): Promise<Problem[]> {
  if (lines.length === 0) return [];
  const rows = await write
    .select({ id: configurationLines.id })
    .from(configurationLines)
    .where(
      and(
        inArray(
          configurationLines.id,
          lines.map(({ id }) => id),
        ),
        ne(configurationLines.versionId, versionId),
      ),
    );
  const others = new Set(rows.map(({ id }) => id));
  const seen = new Set<string>();
  return lines.flatMap(({ id }, at) => {
    const bad = others.has(id) || seen.has(id);
    seen.add(id);
    return bad ? [{ path: ['lines', at, 'id'], code: 'line-of-another', message: words.lineOfAnother }] : [];
  });
}
