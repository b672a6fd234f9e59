import { z } from 'zod';
import { entryId, itemId, lineId, scanId, setId, stockId } from '../identity/ids';
import { plainDate } from '../quantities/plainDate';
import { pieceCondition } from '../sets/setState';
import { stockForm } from '../stock/stock';

const pieces = z
  .number('a whole number')
  .int('whole pieces only')
  .min(1, 'at least 1')
  .max(999, 'at most 999');
const text = (most: number) => z.string().trim().min(1, 'say what').max(most, `at most ${most} characters`);

/** What is wrong with a piece that is put aside. */
export const fault = pieceCondition.exclude(['sound']);
export type Fault = z.infer<typeof fault>;

/** Where a piece goes that is put aside. There is no third way: nothing is straightened at the bench. */
export const asideRoute = z.enum(['repair', 'discard']);
export type AsideRoute = z.infer<typeof asideRoute>;

/** Where a piece came from that was put in. */
export const refillSource = z.discriminatedUnion('kind', [
  /** One heap of the shelf, as it was read from the pack: its lot stays known. */
  z.strictObject({
    kind: z.literal('stock'),
    stockId,
    form: stockForm,
    lot: z.string().max(60).nullable(),
    useBy: plainDate.nullable(),
  }),
  /** From elsewhere, in words: a spare of another set, a piece back from repair. Its lot is not known. */
  z.strictObject({ kind: z.literal('other'), where: text(120) }),
]);
export type RefillSource = z.infer<typeof refillSource>;

/** Where a piece belongs that lies in the wrong place. */
export const home = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('set'), setId }),
  z.strictObject({ kind: z.literal('elsewhere'), where: text(120) }),
]);
export type Home = z.infer<typeof home>;

/** Everything that can be entered at the bench, one act an entry. Nothing among it counts more than one line. */
export const benchAct = z.discriminatedUnion('kind', [
  /** So many fit pieces lie in the slot of this line now. */
  z.strictObject({ kind: z.literal('found'), lineId, pieces: z.number().int().min(0).max(999) }),
  /** One more piece of this line, known by its code; a piece with a serial number counts once. */
  z.strictObject({ kind: z.literal('oneMore'), lineId, serial: z.string().min(1).max(60).nullable() }),
  /** Pieces taken out as unfit. */
  z.strictObject({ kind: z.literal('fault'), lineId, pieces, condition: fault, route: asideRoute }),
  z.strictObject({ kind: z.literal('refill'), lineId, pieces, from: refillSource }),
  /** Pieces of no line of this set lie in it. */
  z.strictObject({ kind: z.literal('foreign'), itemId, pieces, note: z.string().trim().max(200).nullable() }),
  /** Pieces too many in a line, taken to where they belong. */
  z.strictObject({ kind: z.literal('surplusHome'), lineId, pieces, home }),
  /** Foreign pieces, found now or known from before, taken to where they belong. */
  z.strictObject({ kind: z.literal('foreignHome'), itemId, pieces, home }),
  /** A layer was looked over as a whole, against its map. It counts no line. */
  z.strictObject({ kind: z.literal('looked'), layer: z.number().int().min(1).max(12) }),
  /** An entry of this count was a mistake. It stays on record. */
  z.strictObject({ kind: z.literal('undo'), entryId }),
  z.strictObject({ kind: z.literal('note'), text: text(400) }),
]);
export type BenchAct = z.infer<typeof benchAct>;

/** An act as it is sent: the id is made where it is entered, so that sending it again enters it once. */
export const sentEntry = z.strictObject({
  id: entryId,
  act: benchAct,
  /** When it was done, by the clock of the workstation. */
  doneAt: z.iso.datetime({ precision: 3 }),
  scanId: scanId.nullish(),
});
export type SentEntry = z.infer<typeof sentEntry>;

/** An act on record. */
export interface BenchEntry {
  id: string;
  act: BenchAct;
  doneAt: string;
  /** The other person who stood for it, where two did. */
  secondPersonId?: string | null;
}
