import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { prove } from '@/app/_server/prove';
import type { Access } from '@/app/_server/session';
import { oneOf } from '@/app/api/v1/_reading/one';
import { answerAboutLoan } from '@/db/operations/loans/answer-about-loan';
import { answerLoan } from '@/db/operations/loans/answer-loan';
import { askAboutLoan } from '@/db/operations/loans/ask-about-loan';
import type { AtLoan } from '@/db/operations/loans/at-loan';
import { beginLoanReturn } from '@/db/operations/loans/begin-loan-return';
import { bringLoanList } from '@/db/operations/loans/bring-loan-list';
import { callOffLoan } from '@/db/operations/loans/call-off-loan';
import { countLoan } from '@/db/operations/loans/count-loan';
import { declareLoan } from '@/db/operations/loans/declare-loan';
import { handOverLoan } from '@/db/operations/loans/hand-over-loan';
import { openClaim } from '@/db/operations/loans/open-claim';
import { recordArrival } from '@/db/operations/loans/record-arrival';
import { recordLoanUse } from '@/db/operations/loans/record-loan-use';
import { recordPapers } from '@/db/operations/loans/record-papers';
import { settleClaim } from '@/db/operations/loans/settle-claim';
import { tagTrays } from '@/db/operations/loans/tag-trays';
import { takeLoanIn } from '@/db/operations/loans/take-loan-in';
import { weighTrays } from '@/db/operations/loans/weigh-trays';
import { findLoan } from '@/db/queries/loans/findLoan';
import { loanId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { Attestation } from '@/lib/people/attestation';
import { describedLoanBody, type LoanAct, loanBody } from './acts';

/** One act on one loan. Who may do it, and when, is for its operation to say. */
export const POST = endpoint(
  'POST /api/v1/loans/[id]',
  { body: describedLoanBody },
  async ({ request, params, ...access }) => {
    const id = loanId.safeParse(params.id);
    if (!id.success) return noSuch('loan');
    const body = await readBody(request, loanBody);
    if (!body.ok) return body.response;
    const { baseRevision, asked } = body.value;
    const { db, person } = access;
    return outcomeAnswer(
      await done({ db, person, now: now(), newId, loanId: id.data, baseRevision }, asked, access),
    );
  },
);

async function done(at: AtLoan, asked: LoanAct, access: Access) {
  switch (asked.act) {
    case 'answer':
      return answerLoan({ ...at, entry: asked.entry });
    case 'arrive':
      return recordArrival({ ...at, entry: asked.entry });
    case 'papers':
      return recordPapers({ ...at, entry: asked.entry });
    case 'weigh':
      return weighTrays({ ...at, entry: asked.entry });
    case 'count':
      return countLoan({ ...at, entry: asked.entry });
    case 'ask':
      return askAboutLoan({ ...at, entry: asked.entry });
    case 'use':
      return recordLoanUse({ ...at, entry: asked.entry });
    case 'claim':
      return openClaim({ ...at, entry: asked.entry });
    case 'tag':
      return tagTrays(at);
    case 'takeIn':
      return takeLoanIn(at);
    case 'callOff':
      return callOffLoan({ ...at, because: asked.because });
    case 'beginReturn':
      return beginLoanReturn({ ...at, because: asked.because });
    case 'list':
      return bringLoanList({ ...at, source: asked.source, dryRun: asked.dryRun });
    case 'decide':
      return answerAboutLoan({
        ...at,
        questionId: asked.questionId,
        answer: asked.answer,
        words: asked.words,
      });
    case 'settle':
      return settleClaim({ ...at, claimId: asked.claimId, entry: asked.entry });
    case 'declare':
      return proven(access, asked.proof, 'iDeclareThisLoan', (attestation) =>
        // the moment of the proof is the moment of the act
        declareLoan({ ...at, now: attestation.at, attestation }),
      );
    case 'handOver':
      return proven(access, asked.proof, 'iHandThisOver', (attestation) =>
        handOverLoan({ ...at, now: attestation.at, collectedBy: asked.collectedBy, attestation }),
      );
  }
}

async function proven<T, C>(
  access: Access,
  { who, secret }: Extract<LoanAct, { act: 'declare' }>['proof'],
  meaning: 'iDeclareThisLoan' | 'iHandThisOver',
  act: (attestation: Attestation) => Promise<Outcome<T, C>>,
): Promise<Outcome<T, C>> {
  const proof = await prove({ access, who, secret, meaning });
  return proof.ok ? act(proof.value) : { ok: false, refusal: { ...proof.refusal, current: null } };
}

/** One loan: its papers, trays and lines, its counts, and what has to be done next. */
export const GET = oneOf('GET /api/v1/loans/[id]', { what: 'loan' }, async ({ db, params }) => {
  const found = await findLoan(db, params.id, now());
  return found && { revision: found.loan.revision, ...found };
});
