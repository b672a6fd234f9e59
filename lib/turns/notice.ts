import { z } from 'zod';
import { heldBecause, pieceCondition, turnStep } from '../sets/setState';
import { urgency } from '../theatre/surgicalCase';
import { asideOutcome } from './aside';

const name = z.string().min(1).max(200);

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
]);
export type NoticeContent = z.infer<typeof noticeContent>;
