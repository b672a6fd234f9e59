import type { Queries } from '@/db/client';
import { approveRestock } from '@/db/operations/restock/approve-restock';
import { proposeRestock } from '@/db/operations/restock/propose-restock';
import { receiveOrder } from '@/db/operations/restock/receive-order';
import { items, restockLines, supplyOrderLines } from '@/db/schema';
import { groupBy } from '@/lib/lists/groupBy';
import { actingIn, demoPerson, done } from '../acting';
import { MAKERS } from '../catalogue/makers';
import type { HospitalClock } from '../hospitalClock';

/** So many lines of each maker were ordered: the must-haves first. */
const LINES = 6;
const WAITS = 'It waits for the next round: this one is for must-haves that ran low.';
/** Of the order that came in part: so many of its lines came. */
const LINES_CAME = 3;

/**
 * One round of orders, as the keeper had it worked out and the manager approved it: one is past the day it was expected on, one is due
 * today and came in part, and of one nobody stated how long it takes. Needs the journal of pieces, by which it is worked out.
 */
export async function insertOrders(write: Queries, clock: HospitalClock): Promise<void> {
  const { db, newId } = actingIn(write, 'order');
  // the maker that needs ten days sends by today, the one that needs five is late
  const at = {
    proposed: clock.at(-10, '09:20'),
    approved: clock.at(-10, '11:05'),
    came: clock.at(-1, '14:10'),
  };
  const keeper = demoPerson('person_dilys-harrow');
  const proposed = done(await proposeRestock({ db, now: at.proposed, newId, person: keeper }));
  const itemOf = new Map((await write.select().from(items)).map((item) => [item.id, item]));
  const codeOf = ({ itemId }: { itemId: string }) => itemOf.get(itemId)?.code ?? itemId;
  const byCode = (a: { itemId: string }, b: { itemId: string }) => (codeOf(a) < codeOf(b) ? -1 : 1);
  // there is no proposal before it, and no order
  const wanted = (await write.select().from(restockLines))
    .filter((line) => line.proposed > 0)
    .sort((a, b) => (a.mustHaveClass ?? 0) - (b.mustHaveClass ?? 0) || byCode(a, b));
  const now = new Set(
    [...groupBy(wanted, ({ makerId }) => makerId).values()].flatMap((own) =>
      own.slice(0, LINES).map(({ id }) => id),
    ),
  );
  const { orders } = done(
    await approveRestock({
      db,
      now: at.approved,
      newId,
      person: demoPerson('person_gwen-sallis'),
      restockId: proposed.id,
      baseRevision: 1,
      entry: {
        changes: wanted.flatMap(({ id }) => (now.has(id) ? [] : [{ lineId: id, pieces: 0, because: WAITS }])),
      },
    }),
  );
  const inPart = orders.find(({ makerId }) => makerId === MAKERS.sallowfen.id);
  if (!inPart) throw new Error('the demo orders from a maker that sends in parts');
  const came = (await write.select().from(supplyOrderLines))
    .filter(({ orderId, itemId }) => orderId === inPart.id && itemOf.get(itemId)?.suppliedSterile !== true)
    .sort(byCode)
    .slice(0, LINES_CAME);
  done(
    await receiveOrder({
      db,
      now: at.came,
      newId,
      person: keeper,
      orderId: inPart.id,
      baseRevision: 1,
      entry: {
        placeId: 'place_general-stores',
        parts: came.map((line, index) => ({
          lineId: line.id,
          // the last of them came short
          quantity: index === came.length - 1 ? Math.max(1, Math.floor(line.ordered / 2)) : line.ordered,
          lot: `${codeOf(line).replaceAll(/[^A-Z0-9]/g, '')}-${71 + index}`,
          useBy: null,
          form: 'unsterile',
        })),
      },
    }),
  );
}
