import { and, asc, eq, gt, inArray, isNull, max, or } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { WantedTurn } from '@/lib/turns/wanted';
import { mayRead, type Reading } from '../../reader';
import { cases, people, turnSteps, wantedTurns } from '../../schema';

/** The sets wanted sooner for cases to come, the soonest first. */
export async function loadWantedTurns(db: Reading, now: string): Promise<WantedTurn[]> {
  mayRead(db, 'readHospital');
  const before = alias(cases, 'before');
  const rows = await db.read
    .select({ wanted: wantedTurns, wantedFor: cases, before, askedBy: people.name })
    .from(wantedTurns)
    .innerJoin(cases, eq(cases.id, wantedTurns.forCaseId))
    .innerJoin(people, eq(people.id, wantedTurns.askedBy))
    .leftJoin(before, eq(before.id, wantedTurns.afterCaseId))
    .where(and(or(gt(cases.startsAt, now), gt(wantedTurns.wantedBy, now)), isNull(cases.cancelledAt)))
    .orderBy(asc(wantedTurns.wantedBy), asc(wantedTurns.id));
  if (rows.length === 0) return [];
  const stored = await db.read
    .select({ setId: turnSteps.setId, at: max(turnSteps.doneAt) })
    .from(turnSteps)
    .where(
      and(
        eq(turnSteps.step, 'inSterileStore'),
        inArray(
          turnSteps.setId,
          rows.map(({ wanted }) => wanted.setId),
        ),
      ),
    )
    .groupBy(turnSteps.setId);
  const storedAt = new Map(stored.map(({ setId, at }) => [setId, at]));
  return rows.map(({ wanted, wantedFor, before: after, askedBy }) => ({
    setId: wanted.setId,
    wantedBy: wanted.wantedBy,
    forCase: { id: wantedFor.id, reference: wantedFor.reference, startsAt: wantedFor.startsAt },
    afterCase: after && { id: after.id, startsAt: after.startsAt },
    askedBy,
    askedAt: wanted.askedAt,
    storedAt: storedAt.get(wanted.setId) ?? null,
  }));
}
