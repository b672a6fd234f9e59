import { z } from 'zod';
import { entryId, itemId, lineId, setId } from '../identity/ids';

/** Before anything is opened up, and before the wound is closed. */
export const countMoment = z.enum(['first', 'final']);
export type CountMoment = z.infer<typeof countMoment>;

const pieces = z.number('a whole number').int('whole pieces only').min(0).max(999, 'at most 999');

/** What a figure is about: a line of a set's count sheet, or an item added at the table, known by its key. */
export const countedThing = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('line'), setId, lineId }),
  z.strictObject({ kind: z.literal('added'), key: z.string().regex(/^[0-9a-z-]{1,60}$/) }),
]);
export type CountedThing = z.infer<typeof countedThing>;

/** Everything that is said in a count, one act an entry; of figures about one thing the last one holds. */
export const theatreAct = z.discriminatedUnion('kind', [
  /** So many are here now. */
  z.strictObject({ kind: z.literal('counted'), thing: countedThing, pieces }),
  /** Of what is not here any more: so many lie in the patient as implants. Final count only. */
  z.strictObject({ kind: z.literal('implanted'), thing: countedThing, pieces }),
  /** So many were thrown away, and where that is known: cut wires, opened packs. Final count only. */
  z.strictObject({ kind: z.literal('discarded'), thing: countedThing, pieces }),
  /** An item that is on no count sheet came to the table, so many of it in all since the count before. */
  z.strictObject({
    kind: z.literal('added'),
    key: z.string().regex(/^[0-9a-z-]{1,60}$/),
    /** From the catalogue, or in words. */
    itemId: itemId.nullable(),
    name: z.string().trim().min(1, 'say what').max(120, 'at most 120 characters'),
    pieces,
  }),
  /** The set was not opened: nothing of it is counted. */
  z.strictObject({ kind: z.literal('notOpened'), setId, so: z.boolean() }),
]);
export type TheatreAct = z.infer<typeof theatreAct>;

/** An act as it is sent: the id is made where it is entered, so that sending it again enters it once. */
export const sentTheatreEntry = z.strictObject({
  id: entryId,
  act: theatreAct,
  doneAt: z.iso.datetime({ precision: 3 }),
});
export type SentTheatreEntry = z.infer<typeof sentTheatreEntry>;

export interface TheatreEntry {
  id: string;
  act: TheatreAct;
  doneAt: string;
}
