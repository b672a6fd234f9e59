import { and, eq, isNotNull, isNull, notExists } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { Queries } from '../../client';
import { casePicks, caseReturns } from '../../schema';

interface SetOfCase {
  setId: string;
  caseId: string;
  packId: string | null;
  placeId: string | null;
  personId: string;
  doneAt: string;
  now: string;
  newId: NewId;
}

/** A set was sent to a case by itself: what is out for the case is all in one place, whichever way it went. */
export async function noteSent(write: Queries, given: SetOfCase): Promise<void> {
  const { setId, caseId, packId, placeId, personId, doneAt, now, newId } = given;
  const picked = await write
    .update(casePicks)
    .set({ issuedBy: personId, issuedAt: now })
    .where(
      and(
        eq(casePicks.setId, setId),
        eq(casePicks.caseId, caseId),
        isNull(casePicks.putBackAt),
        isNull(casePicks.issuedAt),
      ),
    )
    .returning({ id: casePicks.id });
  if (picked.length > 0) return;
  await write.insert(casePicks).values({
    id: newId('pick'),
    caseId,
    setId,
    packId,
    placeId,
    quantity: 1,
    how: 'sent',
    pickedBy: personId,
    doneAt,
    enteredAt: now,
    issuedBy: personId,
    issuedAt: now,
  });
}

/** A set left theatre: it is out for its case no more, unless it was said already as what it came back. */
export async function noteBack(
  write: Queries,
  { setId, caseId, personId, doneAt, now, newId }: Omit<SetOfCase, 'packId' | 'placeId'>,
): Promise<void> {
  const out = await write
    .select({ id: casePicks.id })
    .from(casePicks)
    .where(
      and(
        eq(casePicks.setId, setId),
        eq(casePicks.caseId, caseId),
        isNotNull(casePicks.issuedAt),
        notExists(
          write.select({ id: caseReturns.id }).from(caseReturns).where(eq(caseReturns.pickId, casePicks.id)),
        ),
      ),
    );
  for (const { id } of out)
    await write.insert(caseReturns).values({
      id: newId('return'),
      pickId: id,
      outcome: 'cameBack',
      quantity: 1,
      personId,
      doneAt,
      enteredAt: now,
    });
}
