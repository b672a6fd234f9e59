import { z } from 'zod';
import { entryId, itemId, packId, pickId, scanId, setId, stockId } from '../identity/ids';
import { plainDate } from '../quantities/plainDate';

const quantity = z.number().int('whole pieces only').min(1, 'at least 1').max(99, 'at most 99');
const doneAt = z.iso.datetime({ precision: 3 });

/** What was in the hand: by its label, by its maker's code, or pointed at on the list. */
export const thingAtHand = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('set'),
    setId,
    /** The sterile barrier its label names; `null` where the set itself was read or pointed at. */
    packId: packId.nullable(),
  }),
  /** A labelled pouch of our own. */
  z.strictObject({ kind: z.literal('pouch'), packId }),
  /** A heap of the shelf, by its label or pointed at. */
  z.strictObject({ kind: z.literal('stock'), stockId }),
  /** A maker's pack, with what its code says of it; `null` where it does not. */
  z.strictObject({
    kind: z.literal('item'),
    itemId,
    lot: z.string().max(60).nullable(),
    useBy: plainDate.nullable(),
  }),
]);
export type ThingAtHand = z.infer<typeof thingAtHand>;

/** One thing done at the picking of a kit, as it is sent: the id is made where it is done, so that twice is once. */
export const sentPick = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('pick'),
    id: pickId,
    thing: thingAtHand,
    quantity,
    how: z.enum(['scan', 'touch']),
    scanId: scanId.nullish(),
    doneAt,
  }),
  z.strictObject({ kind: z.literal('putBack'), id: entryId, pickId, doneAt }),
]);
export type SentPick = z.infer<typeof sentPick>;

/** What the second person saw, or which entry of theirs was a mistake. */
export const checkAct = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('seen'), thing: thingAtHand, quantity }),
  z.strictObject({ kind: z.literal('undo'), entryId }),
]);
export type CheckAct = z.infer<typeof checkAct>;

export const sentCheckEntry = z.strictObject({
  id: entryId,
  act: checkAct,
  doneAt,
  scanId: scanId.nullish(),
});
export type SentCheckEntry = z.infer<typeof sentCheckEntry>;
