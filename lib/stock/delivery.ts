import { z } from 'zod';
import { deliveryId, deliveryLineId, itemId, lenderId, orderLineId, placeId, scanId } from '../identity/ids';
import type { Problem } from '../identity/result';
import { isPastUseBy, type PlainDate, plainDate } from '../quantities/plainDate';
import { deliveryWords as words } from '../wording/stock-acts';
import { stockHold } from './hold';
import { lotReadAmiss } from './knownLot';
import { stockOwner } from './stock';

const text = (most: number) =>
  z.string().trim().min(1, 'must be stated').max(most, `at most ${most} characters`);

/** One line of a delivery as it was read and typed. What a pack does not state is said to be so, never left empty. */
export const deliveryLine = z.strictObject({
  id: deliveryLineId,
  itemId,
  form: z.enum(['sterilePacked', 'unsterile']),
  lot: z.string().trim().min(1, 'must be stated, or said not to be on the pack').max(60).nullable(),
  useBy: plainDate.nullable(),
  count: z.number().int('whole numbers only').min(1, 'at least 1').max(9_999, 'at most 9,999'),
  unit: z.enum(['packs', 'pieces']),
  placeId,
  owner: stockOwner,
  /** Whose it is, where it is on consignment; `null`: ours, or the note does not say. */
  lenderId: lenderId.nullable().default(null),
  /** Put on its shelf as held, because …: nothing takes from it. `null`: not held. */
  held: stockHold.nullable(),
  /** The same lot is on record with another use-by, and this one was read again. */
  useByReadAgain: z.boolean(),
  /** The code it was read from, where one was. */
  scanId: scanId.nullable(),
  /** The line of an open order that whoever received it counts it to; `null`: to none. */
  orderLineId: orderLineId.nullable().default(null),
});
export type DeliveryLine = z.infer<typeof deliveryLine>;

/** A delivery as it is sent. Ids are made where it was entered: sent twice it is received once. */
export const delivery = z.strictObject({
  id: deliveryId,
  supplier: text(80),
  /** The number on the delivery note. */
  reference: text(60),
  arrivedOn: plainDate,
  lines: z.array(deliveryLine).min(1, 'at least one line').max(200, 'at most 200 lines'),
});

/** What is on record about the item of a line. */
export interface LineFacts {
  item: { name: string; status: 'current' | 'withdrawn' | 'recalled'; packMultiple: number } | null;
  placeInUse: boolean;
  /** The owner named is one on record, in use; true where none is named. */
  ownerInUse: boolean;
  lotUnderRecall: boolean;
  /** Use-bys on record for the same lot of the same item. */
  useBysOfLot: readonly (PlainDate | null)[];
}

export const piecesOf = (line: Pick<DeliveryLine, 'count' | 'unit'>, packMultiple: number): number =>
  line.unit === 'packs' ? line.count * packMultiple : line.count;

/** Everything that keeps a line from being received, at once; `at` is its place in the delivery. */
export function lineProblems(
  line: DeliveryLine,
  { item, placeInUse, ownerInUse, lotUnderRecall, useBysOfLot }: LineFacts,
  { at, arrivedOn }: { at: number; arrivedOn: PlainDate },
): Problem[] {
  const problems: Problem[] = [];
  const add = (member: string, code: string, message: string) =>
    problems.push({ path: ['lines', at, member], code, message });
  if (item === null) {
    add('itemId', 'no-such-item', words.noSuchItem);
    return problems;
  }
  if (item.status !== 'current') add('itemId', item.status, words.notCurrent(item.name, item.status));
  if (!placeInUse) add('placeId', 'no-such-place', words.placeNeeded);
  if (!ownerInUse) add('lenderId', 'no-such-owner', words.noSuchOwner);
  if (line.owner === 'ours' && line.lenderId !== null) add('lenderId', 'is-ours', words.oursHasNoOwner);
  if (lotUnderRecall) add('lot', 'lot-recalled', words.lotRecalled(item.name, line.lot));
  if (
    line.form === 'sterilePacked' &&
    line.useBy !== null &&
    isPastUseBy(line.useBy, arrivedOn) &&
    line.held === null
  )
    add('useBy', 'past-use-by', words.pastOnArrival(item.name, line.useBy, arrivedOn));
  const amiss = lotReadAmiss(line, useBysOfLot);
  if (amiss) add('useBy', amiss.code, amiss.message);
  return problems;
}
