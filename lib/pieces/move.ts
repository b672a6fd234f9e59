import { z } from 'zod';

/**
 * How pieces move. A *heap* is a lot of an item at a place of the shelf, a *slot* a line of a set; a case holds single packs from
 * their issue until it is known what became of them. What is not one of these is outside: the maker, a patient, the bin.
 */
export const moveAct = z.enum([
  /** Outside to a heap or slot: what lay there when the journal, or the slot's part in it, began. */
  'opening',
  /** Outside to a heap: a delivery. */
  'received',
  /** Outside to a heap: the load of a pouch was accepted. */
  'shelved',
  /** Heap to heap. */
  'moved',
  /** A heap, or elsewhere, to a slot. */
  'refilled',
  /** Slot to slot of one set that follows another version: nothing was touched, the line has another name. */
  'carried',
  /** A slot to a heap or elsewhere: surplus taken home, a refill taken back. */
  'takenOut',
  /** A heap to a case. */
  'issued',
  /** A case to a heap: back unopened. */
  'cameBack',
  /** A slot or a case to the patient of a case. */
  'implanted',
  /** A slot, a case or a heap to the bin: opened, not implanted; dropped or damaged; past use-by. */
  'wasted',
  /** A slot, a case or a heap to nobody knows where; the reason says at which step. */
  'notFound',
  /** Nobody knows where from, to a heap or slot. */
  'found',
  /** Outside to a slot: what was not found earlier is found to be what was used; its use follows. */
  'explained',
  /** A slot to the pieces put aside as unfit. */
  'setAside',
  /** Put aside to a heap. */
  'repaired',
  /** Put aside to the bin. */
  'discarded',
  /** A heap back to its owner. */
  'sentBack',
]);
export type MoveAct = z.infer<typeof moveAct>;

/** At which step pieces were not found, as `reason` of such a move. */
export const notFoundStep = z.enum(['bench', 'theatre', 'shelf', 'comingBack']);
export type NotFoundStep = z.infer<typeof notFoundStep>;
