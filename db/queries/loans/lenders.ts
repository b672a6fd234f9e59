import { asc, eq, inArray } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { dueOf, neededAt, noticeTerms } from '@/lib/loans/due';
import { type LenderFigures, type LoanOnRecord, lenderFigures } from '@/lib/loans/figures';
import { mayRead, type Reading } from '../../reader';
import { cases, lenders, loans, loanTrays, turnSteps } from '../../schema';
import { readSetting } from '../settings';

export interface LenderOnFile {
  id: string;
  name: string;
  contact: string | null;
  phone: string | null;
  email: string | null;
  address: string | null;
  note: string | null;
  inUse: boolean;
  revision: number;
  loans: { id: string; number: string; state: string; askedFor: string; askedAt: string }[];
  figures: LenderFigures;
}

/** Every lender with its loans and its figures, those in use first. */
export async function lendersOnFile(db: Reading, now: string): Promise<LenderOnFile[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [rows, lent, setting] = await Promise.all([
    read.select().from(lenders).orderBy(asc(lenders.name)),
    read
      .select({ loan: loans, booked: cases })
      .from(loans)
      .leftJoin(cases, eq(cases.id, loans.caseId))
      .orderBy(asc(loans.number)),
    readSetting(read, 'loans'),
  ]);
  const passed = await stepsByLoan(db);
  const byLender = groupBy(lent, ({ loan }) => loan.lenderId);
  const terms = noticeTerms(setting);
  return rows
    .map(({ withdrawnAt, ...row }) => {
      const own = byLender.get(row.id) ?? [];
      const onRecord = own.map(({ loan, booked }): LoanOnRecord => {
        const needed = neededAt(loan, booked, setting);
        const steps = passed.get(loan.id) ?? new Set<string>();
        return {
          state: loan.state,
          arrivedAt: loan.arrivedAt,
          dueAt: loan.arrivedAt !== null ? loan.dueAt : needed === null ? null : dueOf(needed, terms),
          processed: steps.has('washing'),
          used: steps.has('inTheatre'),
        };
      });
      return {
        ...row,
        inUse: withdrawnAt === null,
        loans: own.map(({ loan: { id, number, state, askedFor, askedAt } }) => ({
          id,
          number,
          state,
          askedFor,
          askedAt,
        })),
        figures: lenderFigures(onRecord, now),
      };
    })
    .sort((a, b) => Number(b.inUse) - Number(a.inUse));
}

/** Which of washing and theatre some tray of each loan passed. */
async function stepsByLoan({ read }: Reading): Promise<Map<string, Set<string>>> {
  const rows = await read
    .selectDistinct({ loanId: loanTrays.loanId, step: turnSteps.step })
    .from(loanTrays)
    .innerJoin(turnSteps, eq(turnSteps.setId, loanTrays.setId))
    .where(inArray(turnSteps.step, ['washing', 'inTheatre']));
  const all = new Map<string, Set<string>>();
  for (const { loanId, step } of rows) {
    const kept = all.get(loanId) ?? new Set<string>();
    kept.add(step);
    all.set(loanId, kept);
  }
  return all;
}
