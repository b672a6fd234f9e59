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
}

/** Tells the surgeon of the case what became of the loan for it, where there is a case and they did not do it themselves. */
export async function tellSurgeon(
  write: Queries,
  { loan, booked }: Pick<LoanRecord, 'loan' | 'booked'>,
  { news, words = null, person, now, newId }: TellOfLoan,
): Promise<void> {
  if (booked === null || booked.surgeonId === person.id) return;
  const [lender] = await write
    .select({ name: lenders.name })
    .from(lenders)
    .where(eq(lenders.id, loan.lenderId));
  await tellPerson(write, {
    personId: booked.surgeonId,
    kind: 'loanNews',
    detail: {
      number: loan.number,
      lender: lender?.name ?? '',
      caseReference: booked.reference,
      news,
      words,
      by: person.name,
    },
    href: `/loans/${loan.id}`,
    now,
    newId,
  });
}
