import { and, eq, isNull } from 'drizzle-orm';
import type { SentPick } from '@/lib/caseLife/act';
import { mayDo } from '@/lib/caseLife/life';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { pickWords as words } from '@/lib/wording/case-life';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { kitOnRecord } from '../../queries/caseLife/standing';
import type { Person } from '../../queries/people';
import { casePicks, people, setPromises } from '../../schema';
import { BACK_TO_PICKING, changeLife } from './at-kit';

interface PutBack {
  caseId: string;
  person: Person;
  now: string;
  sent: Extract<SentPick, { kind: 'putBack' }>;
}

/**
 * Puts a picked thing back where it lay, inside the caller's transaction: it is free for others, and a promise that was
 * made with the pick ends with it. What was said of the kit as a whole no longer holds.
 */
export async function putBack(
  write: Queries,
  { caseId, person, now, sent }: PutBack,
): Promise<Outcome<{ id: string; enteredAt: string }, never>> {
  const [row] = await write
    .select({ pick: casePicks, by: people.name })
    .from(casePicks)
    .leftJoin(people, eq(people.id, casePicks.putBackBy))
    .where(eq(casePicks.id, sent.pickId));
  if (row?.pick.caseId !== caseId) return refused('notFound', words.noSuchPick);
  const { pick } = row;
  if (pick.putBackId === sent.id)
    return { ok: true, value: { id: sent.id, enteredAt: pick.putBackAt ?? now } };
  if (!may(person, 'pickKit')) return refused('notPermitted', words.mayNot(person.name, 'pick kits'));
  if (pick.putBackAt !== null) return refused('frozen', words.putBackAlready(row.by ?? ''));
  if (pick.issuedAt !== null) return refused('frozen', words.issuedAlready);
  const kit = await kitOnRecord(write, caseId);
  if (!kit) return refused('notFound', words.noSuchCase);
  if (!mayDo(kit.stage, 'putBack')) return refused('frozen', words.notNow(kit.booked.reference, kit.stage));
  await write
    .update(casePicks)
    .set({ putBackId: sent.id, putBackBy: person.id, putBackAt: now })
    .where(and(eq(casePicks.id, pick.id), isNull(casePicks.putBackAt), isNull(casePicks.issuedAt)));
  // a case that was moved meanwhile has its promises anew
  if (pick.promiseId !== null && pick.setId !== null)
    await write
      .delete(setPromises)
      .where(and(eq(setPromises.setId, pick.setId), eq(setPromises.caseId, caseId)));
  if (kit.life && kit.life.pickedAt !== null) await changeLife(write, kit.life, BACK_TO_PICKING);
  await appendLedger(write, {
    doneAt: sent.doneAt,
    enteredAt: now,
    personId: person.id,
    action: 'put-back-from-case',
    subjectKind: 'case',
    subjectId: caseId,
    detail: {
      pickId: pick.id,
      entryId: sent.id,
      ...(pick.setId === null ? { stockId: pick.stockId, quantity: pick.quantity } : { setId: pick.setId }),
      placeId: pick.placeId,
      freedPromise: pick.promiseId,
    },
  });
  return { ok: true, value: { id: sent.id, enteredAt: now } };
}
