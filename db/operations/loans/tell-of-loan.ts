import { eq } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { LoanNews } from '@/lib/turns/notice';
import type { Queries } from '../../client';
import type { LoanRecord } from '../../queries/loans/facts';
import type { Person } from '../../queries/people';
import { lenders } from '../../schema';
import { tellPerson } from '../turns/tell-person';

interface TellOfLoan {
  news: LoanNews;
  words?: string | null;
  person: Person;
  now: string;
  newId: NewId;
  /** Somebody who is told of it in another way. */
  butFor?: string;
}

/** Tells the surgeon of the case, and whoever asked for the loan, what became of it; nobody of what they did themselves. */
export async function tellOfLoan(
  write: Queries,
  { loan, booked }: Pick<LoanRecord, 'loan' | 'booked'>,
  { news, words = null, person, now, newId, butFor }: TellOfLoan,
): Promise<void> {
  const told = new Set([loan.askedBy, ...(booked === null ? [] : [booked.surgeonId])]);
  told.delete(person.id);
  if (butFor !== undefined) told.delete(butFor);
  if (told.size === 0) return;
  const [lender] = await write
    .select({ name: lenders.name })
    .from(lenders)
    .where(eq(lenders.id, loan.lenderId));
  for (const personId of told)
    await tellPerson(write, {
      personId,
      kind: 'loanNews',
      detail: {
        number: loan.number,
        lender: lender?.name ?? '',
        caseReference: booked?.reference ?? null,
        news,
        words,
        by: person.name,
      },
      href: `/loans/${loan.id}`,
      now,
      newId,
    });
}
