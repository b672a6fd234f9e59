import { and, eq, isNull } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { HandedOver } from '@/lib/loans/declaration';
import { nextStep } from '@/lib/loans/nextStep';
import { type Attestation, attests } from '@/lib/people/attestation';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { LoanRecord } from '../../queries/loans/facts';
import { configurations, sets } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';

interface HandOverLoan extends AtLoan {
  /** Who takes it, by name; they sign on paper. */
  collectedBy: string;
  /** That our person proved who they are and said `iHandThisOver`. */
  attestation: Attestation;
}

const MOST_CHARACTERS = 80;

/** A loan leaves the house in the hands of a named person. Its trays are out of service here, and so are the kinds made for them. */
export async function handOverLoan(request: HandOverLoan): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now, attestation } = request;
  const collectedBy = request.collectedBy.trim();
  return atLoan(request, 'keepLoans', ['goingBack'], async (write, record) => {
    const { loan, facts } = record;
    if (!attests(attestation, person.id, 'iHandThisOver', now))
      return refused('notPermitted', words.proveFirst);
    const next = nextStep(facts);
    if (next.do !== 'handOver') return refused('frozen', words.notYet(loan.number, next));
    const path = ['collectedBy'];
    const problems = textProblems(collectedBy, path);
    if (collectedBy === '') problems.push({ path, code: 'needed', message: words.needed });
    if (collectedBy.length > MOST_CHARACTERS)
      problems.push({ path, code: 'too-long', message: words.tooLong(MOST_CHARACTERS) });
    if (problems.length > 0) return refusedFor(problems);
    const codes = await takeOutOfService(write, record, request);
    const { meaning, method, at } = attestation;
    const handed: HandedOver = { by: person.id, name: person.name, at: now, method };
    const changed = await changeLoan(write, {
      loan,
      action: 'hand-over-loan',
      person,
      now,
      to: 'goneBack',
      change: {
        collectedBy,
        collectedAt: now,
        handedOver: handed,
      },
      detail: { collectedBy, sets: codes, attested: { meaning, method, at } },
    });
    return { ok: true, value: changed };
  });
}

async function takeOutOfService(
  write: Queries,
  { loan, trays }: LoanRecord,
  { person, now }: HandOverLoan,
): Promise<string[]> {
  const reason = words.wentBackAs(loan.number);
  const leaving = trays.flatMap(({ set }) => (set && set.withdrawnAt === null ? [set] : []));
  for (const set of leaving) {
    const revision = set.revision + 1;
    await write
      .update(sets)
      .set({ withdrawnAt: now, withdrawnBecause: reason, placeId: null, revision })
      .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'withdraw-set',
      subjectKind: 'set',
      subjectId: set.id,
      detail: { reason, step: set.step, revision, promisedTo: [] },
    });
  }
  await write
    .update(configurations)
    .set({ withdrawnAt: now })
    .where(and(eq(configurations.loanId, loan.id), isNull(configurations.withdrawnAt)));
  return leaving.map(({ code }) => code);
}
