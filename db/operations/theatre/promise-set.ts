import { and, eq } from 'drizzle-orm';
import type { SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { loanWords } from '@/lib/wording/loan-acts';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import { appendLedger } from '../../ledger';
import { setPromises, sets } from '../../schema';
import { leavingWith } from '../loans/loan-bar';
import { atCase, type CaseNow, type CaseRequest } from './at-case';
import { keepPromise, type RoundTimes, rivalFor, timesFor } from './promises';

interface PromiseSet extends CaseRequest {
  setId: SetId;
  round: RoundTimes;
}

/** Promises a set to a case: from its lead until the set can be back in the store, nobody else can have it. */
export async function promiseSet(request: PromiseSet): Promise<Outcome<{ setCode: string }, CaseNow>> {
  const { now, newId, person, setId, round } = request;
  return atCase(request, 'promiseSets', async (write, row) => {
    if (row.cancelledAt !== null) return refused('frozen', words.cancelled(row.reference));
    if (row.endsAt <= now) return refused('frozen', words.over(row.reference));
    const [set] = await write.select().from(sets).where(eq(sets.id, setId));
    if (!set) return refused('notFound', words.noSuchSet);
    if (set.withdrawnAt !== null) return refused('frozen', words.outOfService(set.code));
    const leaving = await leavingWith(write, setId);
    if (leaving !== null) return refused('frozen', loanWords.leaving(set.code, leaving));
    const [kept] = await write
      .select({ id: setPromises.id })
      .from(setPromises)
      .where(and(eq(setPromises.setId, setId), eq(setPromises.caseId, row.id)));
    if (kept) return refused('frozen', words.promisedAlready(set.code, row.reference));
    const times = await timesFor(write, row, setId, round);
    const rival = await rivalFor(write, setId, times, row.id);
    if (rival) return refused('frozen', words.promisedTo(set.code, rival, now));
    await keepPromise(write, {
      setId,
      caseId: row.id,
      times,
      chosenBy: 'person',
      personId: person.id,
      now,
      newId,
    });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'promise-set',
      subjectKind: 'case',
      subjectId: row.id,
      detail: { setId, setCode: set.code, ...times },
    });
    return { ok: true, value: { setCode: set.code } };
  });
}
