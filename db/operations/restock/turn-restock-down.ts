import { eq } from 'drizzle-orm';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { textProblems } from '@/lib/plans/checkConstruct';
import { turnDownEntry } from '@/lib/restock/entries';
import { appendLedger } from '../../ledger';
import { restocks } from '../../schema';
import { type AtRestock, atRestock, type StandsNow } from './at-restock';

/** Turns a proposal down as a whole, with the reason. Nothing is ordered. */
export async function turnRestockDown(request: AtRestock): Promise<Outcome<{ revision: number }, StandsNow>> {
  const parsed = turnDownEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { because } = parsed.data;
  const problems = textProblems(because, ['because']);
  if (problems.length > 0) return refusedFor(problems);
  const { now, person } = request;
  return atRestock(request, async (write, { id, number, revision }) => {
    await write
      .update(restocks)
      .set({ state: 'turnedDown', decidedBy: person.id, decidedAt: now, because, revision: revision + 1 })
      .where(eq(restocks.id, id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'turn-restock-down',
      subjectKind: 'restock',
      subjectId: id,
      detail: { number, because },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}
