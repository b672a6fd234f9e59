import { and, eq } from 'drizzle-orm';
import type { StartId } from '@/lib/identity/ids';
import { changedTo, type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { checkConstruct } from '@/lib/plans/checkConstruct';
import { compareConstructs } from '@/lib/plans/compare';
import { construct } from '@/lib/plans/plan';
import { startWords as words } from '@/lib/wording/cards';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { planStarts, planStartVersions } from '../../schema';

interface SavePlanStartVersion {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  startId: StartId;
  /** The version the writer began from. */
  baseVersion: number;
  /** As sent from outside. */
  construct: unknown;
}

/**
 * Saves a change of one's own start as its next version; the earlier ones stay, and cases that began from them stay as they
 * are. Saved twice, or without a change, it is no new version.
 */
export async function savePlanStartVersion(
  request: SavePlanStartVersion,
): Promise<Outcome<{ version: number }, never>> {
  const { db, now, person, startId, baseVersion } = request;
  if (!may(person, 'writePlan')) return refused('notPermitted', words.mayNot(person.name));
  const checked = checkConstruct(request.construct, true);
  if (!checked.ok)
    return refusedFor(checked.problems.map((one) => ({ ...one, path: ['construct', ...one.path] })));
  return db.tx(async (write) => {
    const [row] = await write.select().from(planStarts).where(eq(planStarts.id, startId));
    if (row?.personId !== person.id) return refused('notFound', words.unknown);
    if (row.retiredAt !== null) return refused('frozen', words.retired);
    // note and side are the case's
    const body = { ...checked.value, note: null, limb: null };
    const changes = compareConstructs({ ...construct.parse(row.body), limb: null }, body);
    if (changes.length === 0) return { ok: true, value: { version: row.version } };
    if (row.version !== baseVersion) return changedTo(words.changed, row.version);
    const version = row.version + 1;
    await write
      .insert(planStartVersions)
      .values({ startId, version, body, savedBy: person.id, savedAt: now });
    await write
      .update(planStarts)
      .set({ body, version, savedAt: now })
      .where(and(eq(planStarts.id, startId), eq(planStarts.version, baseVersion)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'save-plan-start-version',
      subjectKind: 'start',
      subjectId: startId,
      detail: { version, changes: changes.length },
    });
    return { ok: true, value: { version } };
  });
}
