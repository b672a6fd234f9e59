import { and, eq } from 'drizzle-orm';
import type { StartId } from '@/lib/identity/ids';
import { failed, ok, type Result } from '@/lib/identity/result';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import { planStarts } from '../schema';

interface DeletePlanStart {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  startId: StartId;
}

/** Deletes one's own start. Plans begun from it are copies and stay as they are. */
export async function deletePlanStart({ db, now, person, startId }: DeletePlanStart): Promise<Result<null>> {
  return db.tx(async (write) => {
    const [gone] = await write
      .delete(planStarts)
      .where(and(eq(planStarts.id, startId), eq(planStarts.personId, person.id)))
      .returning({ name: planStarts.name });
    if (!gone) {
      return failed({
        path: [],
        code: 'start-unknown',
        message: 'You have no such start; it may have been deleted.',
      });
    }
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'delete-plan-start',
      subjectKind: 'start',
      subjectId: startId,
      detail: { name: gone.name },
    });
    return ok(null);
  });
}
