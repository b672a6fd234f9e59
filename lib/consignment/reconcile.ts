import { z } from 'zod';

/** What explains that the owner's list and our record differ; pieces as they add to what the owner says over what is here. */
export const explanation = z.object({
  kind: z.enum([
    /** Used, and on no usage order yet. */
    'usedNotTold',
    /** On a usage order that is not sent. */
    'orderNotSent',
    /** On a usage order sent after the list's date. */
    'orderSentLater',
    /** Went back to the owner after the list's date. */
    'sentBackLater',
    /** Came after the list's date. */
    'receivedLater',
  ]),
  pieces: z.number().int(),
});
export type Explanation = z.infer<typeof explanation>;

/** What is on record of one lot of an owner's, and what the owner says of it. */
export interface LotToReconcile {
  itemId: string;
  lot: string | null;
  /** `null`: the lot is not on the list. */
  listed: number | null;
  onShelf: number;
  withCases: number;
  /** Put into slots and not known to have left them. */
  inSlots: number;
  usedNotTold: number;
  orderNotSent: number;
  orderSentLater: number;
  sentBackLater: number;
  receivedLater: number;
}

export interface ReconciledLot {
  itemId: string;
  lot: string | null;
  listed: number | null;
  onShelf: number;
  withCases: number;
  inSlots: number;
  /** What the owner says over what is here. */
  difference: number;
  explained: Explanation[];
  /** What is left of it; it stays until a person writes a reason. */
  unexplained: number;
}

/**
 * Sets an owner's list beside our record, lot by lot. A list speaks of all that is not told as used or sent back: the shelf,
 * what cases hold, and slots. A count here speaks of the shelf alone.
 */
export function reconcileLots(lots: readonly LotToReconcile[], how: 'list' | 'count'): ReconciledLot[] {
  return lots.flatMap((lot): ReconciledLot[] => {
    const { itemId, lot: number, listed, onShelf, withCases, inSlots } = lot;
    const here = how === 'list' ? onShelf + withCases + inSlots : onShelf;
    const difference = (listed ?? 0) - here;
    const of = (kind: Explanation['kind'], pieces: number): Explanation[] =>
      pieces === 0 ? [] : [{ kind, pieces }];
    const explained =
      how === 'count'
        ? []
        : [
            ...of('usedNotTold', lot.usedNotTold),
            ...of('orderNotSent', lot.orderNotSent),
            ...of('orderSentLater', lot.orderSentLater),
            ...of('sentBackLater', lot.sentBackLater),
            ...of('receivedLater', -lot.receivedLater),
          ];
    const unexplained = difference - explained.reduce((sum, { pieces }) => sum + pieces, 0);
    if (listed === null && here === 0 && difference === 0 && explained.length === 0) return [];
    return [{ itemId, lot: number, listed, onShelf, withCases, inSlots, difference, explained, unexplained }];
  });
}
