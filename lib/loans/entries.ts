import { z } from 'zod';
import { caseId, configurationId, lenderId, loanLineId, personId, placeId } from '../identity/ids';
import { plainDate } from '../quantities/plainDate';
import { loanWords as words } from '../wording/loan-acts';

const text = (most: number) => z.string().trim().max(most, words.tooLong(most));
const needed = (most: number) => text(most).min(1, words.needed);
const optional = (most: number) =>
  text(most)
    .transform((said) => said || null)
    .nullable()
    .default(null);

/** A lender's firm as it is entered. */
export const lenderEntry = z.strictObject({
  name: needed(80),
  contact: optional(80),
  phone: optional(40),
  email: optional(120),
  address: optional(300),
  note: optional(400),
});
export type LenderEntry = z.output<typeof lenderEntry>;

/** A request to a lender: for one case, or for a period of whole days. */
export const loanRequest = z
  .strictObject({
    lenderId,
    caseId: caseId.nullable(),
    fromDate: plainDate.nullable(),
    untilDate: plainDate.nullable(),
    askedFor: needed(400),
    configurationId: configurationId.nullable(),
  })
  .superRefine(({ caseId: booked, fromDate, untilDate }, context) => {
    const say = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (booked !== null && (fromDate !== null || untilDate !== null)) say('caseId', words.caseOrPeriod);
    if (booked !== null) return;
    if (fromDate === null) say('fromDate', words.caseOrPeriod);
    if (untilDate === null) say('untilDate', words.untilNeeded);
    if (fromDate !== null && untilDate !== null && untilDate < fromDate) say('untilDate', words.untilBefore);
  });
export type LoanRequest = z.output<typeof loanRequest>;

const instant = z.iso.datetime();
const paper = z.enum(['present', 'missing']);
const stage = z.enum(['in', 'out']);
const pieces = z.number(words.wholeNumber).int(words.wholeNumber).min(0).max(9_999);

/** What the lender said, as the keeper enters it. */
export const loanAnswer = z.discriminatedUnion('answer', [
  z.strictObject({
    answer: z.literal('yes'),
    saidBy: needed(80),
    expectedAt: instant.nullable(),
    backBy: plainDate.nullable(),
  }),
  z.strictObject({ answer: z.literal('no'), saidBy: needed(80), because: needed(400) }),
]);

export const loanArrival = z.strictObject({
  arrivedAt: instant,
  broughtBy: needed(80),
  trays: z.number(words.wholeNumber).int(words.wholeNumber).min(1).max(26),
  placeId: placeId.nullable(),
});

export const loanPapers = z.strictObject({ declaration: paper, instructions: paper });

export const loanWeights = z.strictObject({
  stage,
  grams: z
    .array(
      z.strictObject({ tray: z.number().int().min(1).max(26), grams: z.number().int().min(1).max(60_000) }),
    )
    .min(1)
    .max(26),
});

export const loanCountEntry = z.strictObject({
  stage,
  figures: z.array(z.strictObject({ lineId: loanLineId, sound: pieces, damaged: pieces })).max(600),
});
export type LoanCountEntry = z.output<typeof loanCountEntry>;

export const loanQuestionEntry = z.strictObject({
  kind: z.enum(['acceptLate', 'useWithout']),
  askedOf: personId,
  words: needed(400),
});

export const loanUseEntry = z.strictObject({
  caseId,
  uses: z
    .array(
      z.strictObject({
        lineId: loanLineId,
        outcome: z.enum(['implanted', 'openedNotImplanted']),
        quantity: z.number(words.wholeNumber).int(words.wholeNumber).min(0).max(999),
      }),
    )
    .min(1)
    .max(600),
});

export const loanClaimEntry = z.strictObject({
  lineId: loanLineId,
  stage,
  kind: z.enum(['notFound', 'damaged']),
  words: needed(400),
});

export const claimAnswer = z.strictObject({
  state: z.enum(['agreed', 'disputed', 'withdrawn']),
  saidBy: needed(80),
  words: needed(400),
});
