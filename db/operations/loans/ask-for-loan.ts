import { and, desc, eq, isNull } from 'drizzle-orm';
import { type LoanId, loanId, type NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { type LoanRequest, loanRequest } from '@/lib/loans/entries';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { cases, configurations, configurationVersions, lenders, loanSteps, loans } from '../../schema';
import { tellOfLoan } from './tell-of-loan';

interface AskForLoan {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/** Puts on record what is asked of a lender, for which case or period. The letter is printed from it. */
export async function askForLoan(request: AskForLoan): Promise<Outcome<{ id: LoanId; number: string }>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'askForLoan')) return refused('notPermitted', words.mayNotAsk(person.name));
  const parsed = loanRequest.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  return db.tx(async (write) => {
    const [booked] =
      entry.caseId === null ? [] : await write.select().from(cases).where(eq(cases.id, entry.caseId));
    const problems = [...(await problemsWith(write, entry)), ...caseProblems(entry, booked, now)];
    if (problems.length > 0) return refusedFor(problems);
    const id = loanId.parse(newId('loan'));
    const number = await nextNumber(write);
    const loan = { ...entry, id, number, state: 'asked', askedBy: person.id, askedAt: now, revision: 1 };
    await write.insert(loans).values(loan);
    await write.insert(loanSteps).values({
      loanId: id,
      fromState: null,
      state: 'asked',
      note: null,
      personId: person.id,
      doneAt: now,
      enteredAt: now,
    });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'ask-for-loan',
      subjectKind: 'loan',
      subjectId: id,
      detail: { number, ...entry },
    });
    const [row] = await write.select().from(loans).where(eq(loans.id, id));
    if (row)
      await tellOfLoan(write, { loan: row, booked: booked ?? null }, { news: 'asked', person, now, newId });
    return { ok: true, value: { id, number } };
  });
}

async function problemsWith(write: Queries, entry: LoanRequest): Promise<Problem[]> {
  const problems = textProblems(entry.askedFor, ['askedFor']);
  const [lender] = await write.select().from(lenders).where(eq(lenders.id, entry.lenderId));
  if (!lender) problems.push({ path: ['lenderId'], code: 'unknown', message: words.noSuchLender });
  else if (lender.withdrawnAt !== null)
    problems.push({ path: ['lenderId'], code: 'out-of-use', message: words.lenderOut(lender.name) });
  if (entry.configurationId === null) return problems;
  const [kind] = await write
    .select({ id: configurations.id })
    .from(configurations)
    .innerJoin(configurationVersions, eq(configurationVersions.configurationId, configurations.id))
    .where(
      and(
        eq(configurations.id, entry.configurationId),
        isNull(configurations.withdrawnAt),
        eq(configurationVersions.status, 'inForce'),
      ),
    );
  if (!kind)
    problems.push({ path: ['configurationId'], code: 'unknown', message: words.noSuchConfiguration });
  return problems;
}

function caseProblems(
  { caseId }: LoanRequest,
  booked: typeof cases.$inferSelect | undefined,
  now: string,
): Problem[] {
  if (caseId === null) return [];
  if (!booked) return [{ path: ['caseId'], code: 'unknown', message: words.noSuchCase }];
  return booked.cancelledAt !== null || booked.startsAt <= now
    ? [{ path: ['caseId'], code: 'over', message: words.caseOver(booked.reference) }]
    : [];
}

/** `LN-0001`, one by one. */
async function nextNumber(write: Queries): Promise<string> {
  const rows = await write.select({ number: loans.number }).from(loans).orderBy(desc(loans.number));
  const highest = Math.max(0, ...rows.map(({ number }) => Number(number.slice(3))));
  return `LN-${String(highest + 1).padStart(4, '0')}`;
}
