import { and, eq } from 'drizzle-orm';
import type { LoanId, NewId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type LoanState, loanState, mayBecome } from '@/lib/loans/states';
import { type Act, may } from '@/lib/people/permissions';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { type LoanRecord, type LoanRow, loanRecord } from '../../queries/loans/facts';
import type { Person } from '../../queries/people';
import { loanSteps, loans } from '../../schema';

/** What every act on one loan is asked with. */
export interface AtLoan {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  loanId: LoanId;
  /** The revision of the loan that was seen. */
  baseRevision: number;
}

/** A loan that somebody else changed, as it stands now. */
export interface LoanNow {
  revision: number;
  state: LoanState;
}

const MAY_NOT = {
  keepLoans: words.mayNotKeep,
  countLoan: words.mayNotCount,
  declareLoan: words.mayNotDeclare,
  readHospital: words.mayNotKeep,
} satisfies Partial<Record<Act, (name: string) => string>>;

/** One act on one loan in one of these states: permission, loan, revision and state are checked inside the write it makes. */
export async function atLoan<T>(
  request: AtLoan,
  act: keyof typeof MAY_NOT,
  states: readonly LoanState[],
  work: (write: Queries, record: LoanRecord) => Promise<Outcome<T, LoanNow>>,
): Promise<Outcome<T, LoanNow>> {
  const { db, now, person, loanId, baseRevision } = request;
  if (!may(person, act)) return refused('notPermitted', MAY_NOT[act](person.name));
  return db.tx(async (write) => {
    const [row] = await write.select().from(loans).where(eq(loans.id, loanId));
    if (!row) return refused('notFound', words.noSuchLoan);
    const state = loanState.parse(row.state);
    if (row.revision !== baseRevision)
      return refused('conflict', words.changed(row.number), { revision: row.revision, state });
    if (!states.includes(state)) return refused('frozen', words.notNow(row.number, state));
    return work(write, await loanRecord(write, row, now));
  });
}

interface ChangeLoan {
  loan: LoanRow;
  /** The ledger's verb-noun. */
  action: string;
  person: Person;
  now: string;
  doneAt?: string;
  /** The state it goes to, where it changes, with what is said of it. */
  to?: LoanState;
  note?: string | null;
  change?: Partial<LoanRow>;
  detail?: Record<string, unknown>;
}

/** Writes a change of a loan inside the caller's transaction: its next revision, its step where it takes one, its ledger entry. */
export async function changeLoan(write: Queries, request: ChangeLoan): Promise<{ revision: number }> {
  const { loan, action, person, now, to, change = {}, detail = {} } = request;
  const doneAt = request.doneAt ?? now;
  const revision = loan.revision + 1;
  if (to !== undefined && !mayBecome(loanState.parse(loan.state), to))
    throw new Error(`${loan.number} does not go from ${loan.state} to ${to}`);
  await write
    .update(loans)
    .set({ ...change, ...(to === undefined ? {} : { state: to }), revision })
    .where(and(eq(loans.id, loan.id), eq(loans.revision, loan.revision)));
  if (to !== undefined)
    await write.insert(loanSteps).values({
      loanId: loan.id,
      fromState: loan.state,
      state: to,
      note: request.note ?? null,
      personId: person.id,
      doneAt,
      enteredAt: now,
    });
  await appendLedger(write, {
    doneAt,
    enteredAt: now,
    personId: person.id,
    action,
    subjectKind: 'loan',
    subjectId: loan.id,
    detail: {
      number: loan.number,
      revision,
      ...(to === undefined ? {} : { from: loan.state, to }),
      ...(request.note ? { note: request.note } : {}),
      ...detail,
    },
  });
  return { revision };
}
