import { z } from 'zod';
import {
  itemId,
  lenderId,
  reconciliationId,
  reconciliationLineId,
  usageLineId,
  usageOrderId,
} from '../identity/ids';
import { plainDate } from '../quantities/plainDate';

const reason = z.string().trim().min(8, 'at least 8 characters').max(300, 'at most 300 characters');
const lot = z.string().trim().min(1).max(60).nullable();

/** Whose the consigned pieces of one lot are. `before` is what was seen to be stated; `null`: nothing. */
export const ownerEntry = z.strictObject({
  itemId,
  lot,
  before: lenderId.nullable(),
  lenderId,
  because: reason,
});

/** A usage order to be made: its id is made where it is asked for, and `lines` is how many were seen to wait. */
export const usageOrderEntry = z.strictObject({
  id: usageOrderId,
  lenderId,
  lines: z.number().int().min(1),
});

/** What is done with a usage order. */
export const usageOrderAct = z.discriminatedUnion('kind', [
  /** What the owner is asked for, line by line. */
  z.strictObject({
    kind: z.literal('choose'),
    choices: z
      .array(z.strictObject({ lineId: usageLineId, replace: z.boolean() }))
      .min(1)
      .max(2_000)
      .refine((all) => new Set(all.map(({ lineId }) => lineId)).size === all.length, 'a line is named twice'),
  }),
  z.strictObject({ kind: z.literal('approve') }),
  /** A person sent it; how, in their words. */
  z.strictObject({ kind: z.literal('sent'), how: z.string().trim().min(3, 'say how').max(300) }),
  z.strictObject({ kind: z.literal('withdraw'), because: reason }),
  /** Nothing more is expected in replacement. */
  z.strictObject({ kind: z.literal('settle'), because: reason }),
]);
export type UsageOrderAct = z.infer<typeof usageOrderAct>;

/** What an owner says lies here, or what was counted here, as text with a heading; its id is made where it is entered. */
export const reconciliationEntry = z.strictObject({
  id: reconciliationId,
  lenderId,
  how: z.enum(['list', 'count'], { error: 'say whether it is their list or a count' }),
  listedOn: plainDate,
  text: z.string().max(200_000, 'at most 200,000 characters'),
});

/** Why a difference is there that nothing on record explains. */
export const differenceReason = z.strictObject({
  kind: z.literal('explain'),
  lineId: reconciliationLineId,
  because: reason,
});
