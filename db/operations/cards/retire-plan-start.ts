import { eq } from 'drizzle-orm';
import type { StartId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { startWords as words } from '@/lib/wording/cards';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { planStarts } from '../../schema';

interface RetirePlanStart {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  startId: StartId;
  /** `false` brings it back. */
  retire: boolean;
}

/** Takes a saved start out of use, or brings it back: its owner, or a theatre manager. What began from it stays. */
export async function retirePlanStart(request: RetirePlanStart): Promise<Outcome<null, never>> {
  const { db, now, person, startId, retire } = request;
  return db.tx(async (write) => {
    const [row] = await write.select().from(planStarts).where(eq(planStarts.id, startId));
    if (!row) return refused('notFound', words.noSuch);
    const own = row.personId === person.id && may(person, 'writePlan');
    if (!own && !may(person, 'retireCards')) return refused('notPermitted', words.mayNotRetire(person.name));
    if ((row.retiredAt !== null) === retire) return { ok: true, value: null };
    await write
      .update(planStarts)
      .set({ retiredAt: retire ? now : null, retiredBy: retire ? person.id : null })
      .where(eq(planStarts.id, startId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: retire ? 'retire-plan-start' : 'bring-back-plan-start',
      subjectKind: 'start',
      subjectId: startId,
      detail: { name: row.name, of: row.personId },
    });
    return { ok: true, value: null };
  });
}
