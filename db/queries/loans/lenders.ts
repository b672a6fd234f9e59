import { asc, eq, isNotNull, sql } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { dueOf, neededAt, noticeTerms } from '@/lib/loans/due';
import { type LenderFigures, type LoanOnRecord, lenderFigures } from '@/lib/loans/figures';
import { mayRead, type Reading } from '../../reader';
import { cases, lenders, loans, loanTrays } from '../../schema';
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

/** Which of washing and theatre some tray of each loan passed: asked of each tray, which is here for a few turns at most. */
async function stepsByLoan({ read }: Reading): Promise<Map<string, Set<string>>> {
  const passed = (step: string) =>
    sql<number>`EXISTS (SELECT 1 FROM turn_steps WHERE turn_steps.set_id = loan_trays.set_id AND turn_steps.step = ${step})`;
  const rows = await read
    .select({ loanId: loanTrays.loanId, washing: passed('washing'), inTheatre: passed('inTheatre') })
    .from(loanTrays)
    .where(isNotNull(loanTrays.setId));
  const all = new Map<string, Set<string>>();
  for (const { loanId, ...steps } of rows) {
    const kept = all.get(loanId) ?? new Set<string>();
    for (const [step, has] of Object.entries(steps)) if (has === 1) kept.add(step);
    all.set(loanId, kept);
  }
  return all;
}
