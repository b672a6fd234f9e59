import { desc, eq, gte, notInArray, or, type SQL } from 'drizzle-orm';
import { lateMinutes } from '@/lib/loans/due';
import { type LoanNext, nextStep } from '@/lib/loans/nextStep';
import { type LoanState, loanState } from '@/lib/loans/states';
import { mayRead, type Reading } from '../../reader';
import { lenders, loans } from '../../schema';
import { type LoanRecord, type LoanRow, loanRecord } from './facts';

export interface LoanOnBoard {
  id: string;
  number: string;
  state: LoanState;
  next: LoanNext;
  lender: string;
  askedFor: string;
  caseReference: string | null;
  neededAt: string | null;
  dueAt: string | null;
  arrivedAt: string | null;
  /** Not here, and it should be. */
  overdue: boolean;
  lateMinutes: number | null;
  /** Came after it was due, were it by less than a minute. */
  late: boolean;
  backBy: string | null;
  /** Tags of trays that are held. */
  held: string[];
}

const DAYS_BACK = 30;
const OVER = ['refused', 'calledOff', 'goneBack'];

/** Every loan that is not over, and those of the last month that are: the soonest due first. */
export async function loanBoard(db: Reading, now: string): Promise<LoanOnBoard[]> {
  mayRead(db, 'readHospital');
  const from = new Date(Date.parse(now) - DAYS_BACK * 86_400_000).toISOString();
  return linesWhere(
    db,
    or(notInArray(loans.state, OVER), gte(loans.askedAt, from), gte(loans.collectedAt, from)),
    now,
  );
}

/** The loans that were asked for one case. */
export async function loansForCase(db: Reading, caseId: string, now: string): Promise<LoanOnBoard[]> {
  mayRead(db, 'readHospital');
  return linesWhere(db, eq(loans.caseId, caseId), now);
}

async function linesWhere(db: Reading, which: SQL | undefined, now: string): Promise<LoanOnBoard[]> {
  const { read } = db;
  const rows = await read
    .select({ loan: loans, lender: lenders.name })
    .from(loans)
    .innerJoin(lenders, eq(lenders.id, loans.lenderId))
    .where(which)
    .orderBy(desc(loans.number));
  const all = await Promise.all(
    rows.map(async ({ loan, lender }) => lineOf(loan, lender, await loanRecord(read, loan, now), now)),
  );
  return all.sort((a, b) => (a.dueAt ?? '9999').localeCompare(b.dueAt ?? '9999'));
}

function lineOf(loan: LoanRow, lender: string, record: LoanRecord, now: string): LoanOnBoard {
  const { booked, due, facts, trays } = record;
  return {
    id: loan.id,
    number: loan.number,
    state: loanState.parse(loan.state),
    next: nextStep(facts),
    lender,
    askedFor: loan.askedFor,
    caseReference: booked?.reference ?? null,
    neededAt: due.neededAt,
    dueAt: due.at,
    arrivedAt: loan.arrivedAt,
    overdue: loan.arrivedAt === null && !OVER.includes(loan.state) && due.at !== null && due.at < now,
    lateMinutes: lateMinutes(due.at, loan.arrivedAt),
    late: facts.late,
    backBy: loan.backBy,
    held: trays.flatMap(({ row, set }) => (set?.step === 'held' ? [row.tag ?? set.code] : [])),
  };
}
