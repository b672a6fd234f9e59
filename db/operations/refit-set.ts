import { and, eq, inArray } from 'drizzle-orm';
import type { SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { canBeCounted } from '@/lib/sets/count';
import { turnStep } from '@/lib/sets/setState';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { openDisputes } from '../queries/bench/turnCounts';
import type { Person } from '../queries/people';
import { configurationLines, configurationVersions, setContents, sets } from '../schema';
import { settleDueVersions } from './configurations/settle-due';
import { carrySlots } from './pieces/count-moves';

interface RefitSet {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  setId: SetId;
  baseRevision: number;
}

/**
 * Makes an open set follow the version now in force. What it holds is carried over line by line where one line of an
 * item becomes one line of it; all other lines are not counted yet, and show as such. Lines on which two counts differ
 * are settled first: a dispute is about a line, and only people close it.
 */
export async function refitSet(
  request: RefitSet,
): Promise<Outcome<{ revision: number; version: number }, { revision: number }>> {
  const { db, now, person, setId, baseRevision } = request;
  if (!may(person, 'openSet')) return refused('notPermitted', `${person.name} can’t refit a set.`);
  return db.tx(async (write) => {
    await settleDueVersions(write, now);
    const [set] = await write.select().from(sets).where(eq(sets.id, setId));
    if (!set) return refused('notFound', 'There is no such set.');
    if (set.revision !== baseRevision) {
      return refused('conflict', `${set.code} was changed by someone else. Nothing was saved.`, {
        revision: set.revision,
      });
    }
    if (!canBeCounted(turnStep.parse(set.step)))
      return refused('frozen', `${set.code} is sealed; open it on the bench first.`);
    const [was] = await write
      .select()
      .from(configurationVersions)
      .where(eq(configurationVersions.id, set.versionId));
    const [inForce] = await write
      .select()
      .from(configurationVersions)
      .where(
        and(
          eq(configurationVersions.configurationId, was?.configurationId ?? ''),
          eq(configurationVersions.status, 'inForce'),
        ),
      );
    if (!inForce || inForce.id === set.versionId)
      return refused('frozen', `${set.code} follows the version in force already.`);
    const disputes = await openDisputes(write, setId);
    if (disputes.length > 0)
      return refused(
        'frozen',
        `On ${disputes.length === 1 ? 'one line' : `${disputes.length} lines`} of ${set.code} two counts differ. Count ${disputes.length === 1 ? 'it' : 'them'} again together first: afterwards the line may not be there any more.`,
      );
    const lines = await write
      .select()
      .from(configurationLines)
      .where(inArray(configurationLines.versionId, [set.versionId, inForce.id]));
    const held = await write.select().from(setContents).where(eq(setContents.setId, setId));
    const carried = held.flatMap(({ lineId, found, unsound, condition }) => {
      const before = lines.find(({ id }) => id === lineId);
      const twins = (versionId: string) =>
        lines.filter((line) => line.versionId === versionId && line.itemId === before?.itemId);
      const [after, ...more] = twins(inForce.id);
      if (!after || more.length > 0 || twins(set.versionId).length > 1) return [];
      return [{ setId, lineId: after.id, found, unsound, condition }];
    });
    const revision = set.revision + 1;
    await carrySlots(write, {
      setId,
      lines: lines.flatMap((line) => {
        if (line.versionId !== set.versionId) return [];
        const [after] = lines.filter((one) => one.versionId === inForce.id && one.itemId === line.itemId);
        return [{ itemId: line.itemId, from: line.id, to: after?.id ?? null }];
      }),
      personId: person.id,
      now,
    });
    await write.delete(setContents).where(eq(setContents.setId, setId));
    if (carried.length > 0) await write.insert(setContents).values(carried);
    await write
      .update(sets)
      .set({ versionId: inForce.id, revision })
      .where(and(eq(sets.id, setId), eq(sets.revision, baseRevision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'refit-set',
      subjectKind: 'set',
      subjectId: setId,
      detail: {
        from: was?.version ?? null,
        to: inForce.version,
        carried: carried.length,
        held: held.length,
        revision,
      },
    });
    return { ok: true, value: { revision, version: inForce.version } };
  });
}
