import { and, eq } from 'drizzle-orm';
import type { SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { pickWords } from '@/lib/wording/case-life';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import { appendLedger } from '../../ledger';
import { setsOnKits } from '../../queries/caseLife/standing';
import { setPromises, sets } from '../../schema';
import { atCase, type CaseNow, type CaseRequest } from './at-case';

/** Takes the promise of a set to a case back: the set is free for others. */
export async function freeSet(
  request: CaseRequest & { setId: SetId },
): Promise<Outcome<{ setCode: string }, CaseNow>> {
  const { now, person, setId } = request;
  return atCase(request, 'promiseSets', async (write, row) => {
    const [set] = await write.select({ code: sets.code }).from(sets).where(eq(sets.id, setId));
    if (!set) return refused('notFound', words.noSuchSet);
    const kit = (await setsOnKits(write, setId)).get(setId);
    if (kit?.caseId === row.id) return refused('frozen', pickWords.stillOnKit(set.code, row.reference));
    const taken = await write
      .delete(setPromises)
      .where(and(eq(setPromises.setId, setId), eq(setPromises.caseId, row.id)))
      .returning({ fromAt: setPromises.fromAt, untilAt: setPromises.untilAt });
    if (taken.length === 0) return refused('frozen', words.notPromised(set.code, row.reference));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'free-set',
      subjectKind: 'case',
      subjectId: row.id,
      detail: { setId, setCode: set.code, ...taken[0] },
    });
    return { ok: true, value: { setCode: set.code } };
  });
}
