import { and, eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import { appendLedger } from '../../ledger';
import { cases, theatres } from '../../schema';
import { atCase, type CaseNow, type CaseRequest } from './at-case';
import { theatreTakenBy } from './promises';

/** Puts a cancelled case back on the list at its old time, if the theatre is still free then. It has no sets yet. */
export async function putCaseBack(request: CaseRequest): Promise<Outcome<{ revision: number }, CaseNow>> {
  const { now, person } = request;
  return atCase(request, 'keepTheatreList', async (write, row) => {
    if (row.cancelledAt === null) return refused('frozen', words.notCancelled(row.reference));
    if (row.endsAt <= now) return refused('frozen', words.over(row.reference));
    const taken = await theatreTakenBy(write, row, new Set([row.id]));
    if (taken) {
      const [theatre] = await write.select().from(theatres).where(eq(theatres.id, row.theatreId));
      const message = words.theatreTaken(theatre?.name ?? row.theatreId, taken);
      return refusedFor([{ path: ['time'], code: 'theatre-taken', message }]);
    }
    await write
      .update(cases)
      .set({ cancelledAt: null, cancelledBecause: null, revision: row.revision + 1 })
      .where(and(eq(cases.id, row.id), eq(cases.revision, row.revision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'put-case-back',
      subjectKind: 'case',
      subjectId: row.id,
      detail: { startsAt: row.startsAt },
    });
    return { ok: true, value: { revision: row.revision + 1 } };
  });
}
