import { z } from 'zod';
import { proofBody } from '@/app/_server/prove';
import { loanClaimId, loanQuestionId } from '@/lib/identity/ids';
import {
  claimAnswer,
  loanAnswer,
  loanArrival,
  loanClaimEntry,
  loanCountEntry,
  loanPapers,
  loanQuestionEntry,
  loanUseEntry,
  loanWeights,
} from '@/lib/loans/entries';

const entry = z.looseObject({});
const said = z.string().max(2_000);

/** What may be asked of one loan. An `entry` is parsed by its operation, so that every fault of it comes from one place. */
const loanAct = z.discriminatedUnion('act', [
  z.strictObject({
    act: z.enum(['answer', 'arrive', 'papers', 'weigh', 'count', 'ask', 'use', 'claim']),
    entry,
  }),
  z.strictObject({ act: z.enum(['tag', 'takeIn']) }),
  z.strictObject({ act: z.enum(['callOff', 'beginReturn']), because: said }),
  z.strictObject({
    act: z.literal('list'),
    source: z.discriminatedUnion('kind', [
      z.strictObject({
        kind: z.literal('csv'),
        text: z.string().max(900_000),
        fileName: z.string().max(200),
      }),
      z.strictObject({ kind: z.literal('asAsked') }),
    ]),
    dryRun: z.boolean(),
  }),
  z.strictObject({
    act: z.literal('decide'),
    questionId: loanQuestionId,
    answer: z.enum(['yes', 'no']),
    words: said,
  }),
  z.strictObject({ act: z.literal('settle'), claimId: loanClaimId, entry }),
  z.strictObject({ act: z.literal('declare'), proof: proofBody }),
  z.strictObject({ act: z.literal('handOver'), collectedBy: said, proof: proofBody }),
]);
/** The same with what each `entry` is, as its operation parses it: what is said of it outside. */
const entryOf = {
  answer: loanAnswer,
  arrive: loanArrival,
  papers: loanPapers,
  weigh: loanWeights,
  count: loanCountEntry,
  ask: loanQuestionEntry,
  use: loanUseEntry,
  claim: loanClaimEntry,
};
const [, tagged, because, list, decide, , declare, handOver] = loanAct.options;
const describedAct = z.union([
  ...Object.entries(entryOf).map(([act, itsEntry]) =>
    z.strictObject({ act: z.literal(act), entry: itsEntry as z.ZodType }),
  ),
  tagged,
  because,
  list,
  decide,
  z.strictObject({ act: z.literal('settle'), claimId: loanClaimId, entry: claimAnswer }),
  declare,
  handOver,
]);

export type LoanAct = z.output<typeof loanAct>;

/** Every act is sent with the revision of the loan that was seen. */
export const loanBody = z.strictObject({ baseRevision: z.number().int().positive(), asked: loanAct });
export const describedLoanBody = loanBody.extend({ asked: describedAct });
