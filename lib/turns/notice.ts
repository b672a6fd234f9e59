import { z } from 'zod';
import { heldBecause, pieceCondition, turnStep } from '../sets/setState';
import { urgency } from '../theatre/surgicalCase';
import { recallTask } from '../trace/recall';
import { asideOutcome } from './aside';

const name = z.string().min(1).max(200);
const said = z.string().max(400);

/** What became of a loan, as the surgeon of its case is told. */
const loanNews = z.enum([
  'asked',
  'confirmed',
  'refused',
  'calledOff',
  'arrived',
  'arrivedLate',
  'papersMissing',
  'takenLate',
  'notTakenLate',
  'usedWithout',
  'notUsedWithout',
  'unpacked',
  'goingBack',
]);
export type LoanNews = z.infer<typeof loanNews>;
const loanQuestionKind = z.enum(['acceptLate', 'useWithout']);

/** What a person is told inside the program, by kind. Names are kept as they were when it was told. */
export const noticeContent = z.discriminatedUnion('kind', [
  /** To the finder: what was short in a set is there again. */
  z.object({
    kind: z.literal('shortageFixed'),
    detail: z.object({ setCode: name, itemName: name, quantity: z.number().int().positive(), by: name }),
  }),
  /** To those who may stand for a short set: it waits for them. */
  z.object({
    kind: z.literal('shortDecisionAsked'),
    detail: z.object({ setCode: name, oneCase: z.boolean(), by: name }),
  }),
  /** To the surgeon of a case that a set is promised to. */
  z.object({
    kind: z.literal('promisedSetHeld'),
    detail: z.object({ setCode: name, because: heldBecause, caseReference: name, by: name }),
  }),
  z.object({
    kind: z.literal('promisedSetWithdrawn'),
    detail: z.object({ setCode: name, because: z.string().max(400), caseReference: name, by: name }),
  }),
  /** To whoever held it. */
  z.object({
    kind: z.literal('holdLifted'),
    detail: z.object({ setCode: name, to: turnStep, reason: z.string().max(400), by: name }),
  }),
  /** To whoever put the piece aside. */
  z.object({
    kind: z.literal('asideSettled'),
    detail: z.object({
      itemName: name,
      quantity: z.number().int().positive(),
      condition: pieceCondition,
      outcome: asideOutcome,
      by: name,
    }),
  }),
  /** To the surgeon of a case that somebody else moved, made more or less urgent, or cancelled. */
  z.object({
    kind: z.literal('caseMoved'),
    detail: z.object({
      caseReference: name,
      from: z.iso.datetime(),
      to: z.iso.datetime(),
      lostSets: z.array(name).max(100),
      by: name,
    }),
  }),
  z.object({
    kind: z.literal('caseUrgencyChanged'),
    detail: z.object({ caseReference: name, from: urgency, to: urgency, by: name }),
  }),
  z.object({
    kind: z.literal('caseCancelled'),
    detail: z.object({ caseReference: name, because: z.string().max(400), by: name }),
  }),
  /** To the surgeon of a case that loses a set to an emergency. */
  z.object({
    kind: z.literal('setTakenForEmergency'),
    detail: z.object({
      caseReference: name,
      sets: z.array(name).max(100),
      instead: z.array(name).max(100),
      left: z.enum(['sets', 'none', 'notPlanned']),
      couldStartAt: z.iso.datetime().nullable(),
      forCase: name,
      by: name,
    }),
  }),
  /** To the leads: sets were taken for an emergency, and how many cases lose by it. */
  z.object({
    kind: z.literal('emergencyTook'),
    detail: z.object({
      forCase: name,
      sets: z.array(name).max(100),
      hits: z.number().int().nonnegative(),
      by: name,
    }),
  }),
  /** To the leads: a set went although its record was against it. */
  z.object({
    kind: z.literal('goneAgainstRecord'),
    detail: z.object({ setCode: name, forCase: name, goneAt: z.iso.datetime(), by: name }),
  }),
  /** To whoever picked for it: what lies with the kit of a cancelled case goes back to its places. */
  z.object({
    kind: z.literal('kitToPutBack'),
    detail: z.object({ caseReference: name, things: z.number().int().positive(), by: name }),
  }),
  /** To the surgeon of the case a loan is for, and to whoever asked for it. */
  z.object({
    kind: z.literal('loanNews'),
    detail: z.object({
      number: name,
      lender: name,
      caseReference: name.nullable(),
      news: loanNews,
      words: said.nullable(),
      by: name,
    }),
  }),
  /** To the one person who is asked to decide. */
  z.object({
    kind: z.literal('loanQuestionAsked'),
    detail: z.object({ number: name, question: loanQuestionKind, words: said, by: name }),
  }),
  /** To whoever asked. */
  z.object({
    kind: z.literal('loanQuestionAnswered'),
    detail: z.object({
      number: name,
      question: loanQuestionKind,
      answer: z.enum(['yes', 'no']),
      words: said,
      by: name,
    }),
  }),
  /** To the surgeon of a case whose promised sets changed by a way out that somebody took. */
  z.object({
    kind: z.literal('caseSetsChanged'),
    detail: z.object({
      caseReference: name,
      given: z.array(name).max(100),
      taken: z.array(name).max(100),
      by: name,
    }),
  }),
  /** To the leads: a set is wanted in the sterile store sooner. */
  z.object({
    kind: z.literal('turnWanted'),
    detail: z.object({ setCode: name, wantedBy: z.iso.datetime(), caseReference: name, by: name }),
  }),
  /** To everybody who must know of a recall, with what they are asked to do. */
  z.object({
    kind: z.literal('recallOpened'),
    detail: z.object({
      number: name,
      what: name,
      rehearsal: z.boolean(),
      tasks: z.array(recallTask).min(1),
      by: name,
    }),
  }),
]);
export type NoticeContent = z.infer<typeof noticeContent>;

export type NoticeKind = NoticeContent['kind'];

/**
 * Which kinds a person may switch off: news of what is done and asks nothing of them. What a case or its safety may rest on
 * is told whether it is wanted or not.
 */
export const MAY_BE_OFF = {
  shortageFixed: true,
  shortDecisionAsked: false,
  promisedSetHeld: false,
  promisedSetWithdrawn: false,
  holdLifted: true,
  asideSettled: true,
  caseMoved: false,
  caseUrgencyChanged: false,
  caseCancelled: false,
  setTakenForEmergency: false,
  emergencyTook: false,
  goneAgainstRecord: false,
  kitToPutBack: false,
  loanNews: false,
  loanQuestionAsked: false,
  loanQuestionAnswered: false,
  caseSetsChanged: false,
  turnWanted: false,
  recallOpened: false,
} as const satisfies Record<NoticeKind, boolean>;

export const NOTICE_KINDS = Object.keys(MAY_BE_OFF) as NoticeKind[];
