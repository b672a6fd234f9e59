import { and, eq, isNull } from 'drizzle-orm';
import type { WorkstationId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { peopleWords } from '@/lib/wording/people';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { sessions, workstations } from '../../schema';

interface WithdrawWorkstation {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  workstationId: WorkstationId;
}

/** A browser is a workstation no longer: it takes no badge from now on, and sessions begun at it end. */
export async function withdrawWorkstation(request: WithdrawWorkstation): Promise<Outcome<null, never>> {
  const { db, now, person, workstationId } = request;
  if (!may(person, 'enrolWorkstation')) return refused('notPermitted', peopleWords.mayNotEnrol(person.name));
  return db.tx(async (write) => {
    const mine = and(eq(workstations.id, workstationId), isNull(workstations.withdrawnAt));
    const [there] = await write.select().from(workstations).where(mine);
    if (!there) return refused('notFound', peopleWords.noSuchWorkstation);
    await write.update(workstations).set({ withdrawnAt: now }).where(mine);
    await write
      .update(sessions)
      .set({ endedAt: now })
      .where(and(eq(sessions.workstationId, workstationId), isNull(sessions.endedAt)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'withdraw-workstation',
      subjectKind: 'workstation',
      subjectId: workstationId,
      detail: { name: there.name },
    });
    return { ok: true, value: null };
  });
}
