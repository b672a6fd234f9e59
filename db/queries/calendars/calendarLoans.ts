import { eq } from 'drizzle-orm';
import type { LoanMoment } from '@/lib/calendar/entries';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { mayRead, type Reading } from '../../reader';
import { lenders, loans, places } from '../../schema';
import { lastChanges } from './lastChanges';

/**
 * When loans come and go within these dates, those refused or called off among them. A loan is called by its number and its
 * lender: what it was asked for is free text, and a calendar is read without signing in. What has no stated time is not told.
 */
export async function calendarLoans(
  db: Reading,
  { from, before }: { from: PlainDate; before: PlainDate },
): Promise<LoanMoment[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ loan: loans, lender: lenders.name, place: places.name })
    .from(loans)
    .innerJoin(lenders, eq(lenders.id, loans.lenderId))
    .leftJoin(places, eq(places.id, loans.placeId));
  const changedAt = await lastChanges(
    db,
    'loan',
    rows.map(({ loan }) => loan.id),
  );
  return rows
    .flatMap(({ loan, lender, place }): LoanMoment[] => {
      const of = {
        id: loan.id,
        name: `${loan.number}, ${lender}`,
        place,
        revision: loan.revision,
        changedAt: changedAt(loan.id),
        cancelled: loan.state === 'refused' || loan.state === 'calledOff',
      };
      const comes = loan.arrivedAt ?? loan.expectedAt;
      const goes = loan.collectedAt ?? loan.backBy;
      return [
        ...(comes === null ? [] : [{ ...of, moment: 'arrival' as const, at: comes }]),
        ...(goes === null ? [] : [{ ...of, moment: 'return' as const, at: goes }]),
      ];
    })
    .filter(({ at }) => {
      const date = at.length === 10 ? at : wallClock(at).date;
      return date >= from && date < before;
    });
}
