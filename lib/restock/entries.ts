import { z } from 'zod';
import { itemId, makerId, orderLineId, placeId, restockLineId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { stockForm } from '@/lib/stock/stock';
import { supplyTerms } from './terms';

const reason = z.string().trim().min(8, 'at least 8 characters').max(300);

/** Terms of one maker, or of one item. */
export const termsEntry = z.strictObject({
  of: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('maker'), id: makerId }),
    z.strictObject({ kind: z.literal('item'), id: itemId }),
  ]),
  baseRevision: z.number().int().min(0),
  terms: supplyTerms,
});

/** What is approved otherwise than it was proposed; every other line is approved as it stands. */
export const approvalEntry = z.strictObject({
  changes: z
    .array(
      z.strictObject({
        lineId: restockLineId,
        pieces: z.number().int().min(0).max(100_000),
        because: reason,
      }),
    )
    .max(2_000)
    .refine((all) => new Set(all.map(({ lineId }) => lineId)).size === all.length, 'a line is named twice'),
});

export const turnDownEntry = z.strictObject({ because: reason });

/** One part that came: of one line, lot and use-by. */
const part = z.strictObject({
  lineId: orderLineId,
  quantity: z.number().int().min(1).max(100_000),
  /** `null`: the pack states none, as whoever received it says. */
  lot: z.string().trim().min(1).max(60).nullable(),
  useBy: plainDate.nullable(),
  /** The same lot is on record with another use-by, and this one was read again. */
  useByReadAgain: z.boolean().default(false),
  form: stockForm.exclude(['pouch']),
});
export const partsEntry = z.strictObject({
  placeId,
  parts: z.array(part).min(1, 'say what came').max(200),
});

export const closingEntry = z.strictObject({ because: reason.nullable() });
