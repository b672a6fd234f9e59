import { and, eq, isNull } from 'drizzle-orm';
import type { CaseId, TheatreCountId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import type { CountMoment } from '@/lib/theatreCounts/act';
import { pickWords } from '@/lib/wording/case-life';
import { theatreCountWords as words } from '@/lib/wording/theatre-counts';
import type { Database } from '../../client';
import type { Person } from '../../queries/people';
import { lastClosed, setsInTheatreFor } from '../../queries/theatreCounts/counted';
import { cases, people, theatreCounts } from '../../schema';

interface BeginTheatreCount {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  workstationId: string | null;
  caseId: CaseId;
  moment: CountMoment;
  /** Made where it is begun, so that beginning it twice begins it once. */
  countId: TheatreCountId;
}

/** Begins a count in theatre, or takes up the one this person has open; one count at a time for a case. */
export async function beginTheatreCount(
  request: BeginTheatreCount,
): Promise<Outcome<{ countId: string }, never>> {
  const { db, now, person, workstationId, caseId, moment, countId } = request;
  if (!may(person, 'countInTheatre'))
    return refused('notPermitted', words.mayNot(person.name, 'count in theatre'));
  return db.tx(async (write) => {
    const [booked] = await write.select().from(cases).where(eq(cases.id, caseId));
    if (!booked) return refused('notFound', pickWords.noSuchCase);
    const [open] = await write
      .select({ count: theatreCounts, name: people.name })
      .from(theatreCounts)
      .innerJoin(people, eq(people.id, theatreCounts.personId))
      .where(
        and(
          eq(theatreCounts.caseId, caseId),
          isNull(theatreCounts.closedAt),
          isNull(theatreCounts.abandonedAt),
        ),
      );
    if (open && open.count.personId !== person.id) return refused('frozen', words.notYours(open.name));
    if (open) return { ok: true, value: { countId: open.count.id } };
    const [taken] = await write.select().from(theatreCounts).where(eq(theatreCounts.id, countId));
    if (taken) return refused('conflict', words.idTaken);
    if ((await setsInTheatreFor(write, caseId)).length === 0)
      return refused('frozen', words.nothingThere(booked.reference));
    if (moment === 'final' && (await lastClosed(write, caseId, 'first')) === null)
      return refused('frozen', words.firstFirst(booked.reference));
    await write
      .insert(theatreCounts)
      .values({ id: countId, caseId, moment, personId: person.id, workstationId, beganAt: now });
    return { ok: true, value: { countId } };
  });
}
