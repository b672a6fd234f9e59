import { eq } from 'drizzle-orm';
import { beforeEach, expect, it } from 'vitest';
import { approveUsageOrder } from '@/db/operations/consignment/approve-usage-order';
import { settleUsageOrder } from '@/db/operations/consignment/settle-usage-order';
import { putOnHeap } from '@/db/operations/pieces/heaps';
import { recordMoves } from '@/db/operations/pieces/record-moves';
import { proposeRestock } from '@/db/operations/restock/propose-restock';
import { saveSupplyTerms } from '@/db/operations/restock/save-supply-terms';
import { adjustStock } from '@/db/operations/stock/adjust-stock';
import { latestProposal } from '@/db/queries/restock/proposal';
import { configurationLines, setContents, stock } from '@/db/schema';
import { stockId } from '@/lib/identity/ids';
import { dropped, NOW, type Restocking, restocking, TWO_A_WEEK } from '../restock/hospital';
import { done } from '../stock/shelf';
import { ForOwner, OWNER } from './consigned';

let at: Restocking;
let teller: ForOwner;
let minutes = 0;
const now = () => {
  minutes += 1;
  return new Date(Date.parse(NOW) + minutes * 60_000).toISOString();
};
beforeEach(async () => {
  at = await restocking();
  minutes = 0;
  teller = new ForOwner({ db: at.db, newId: at.newId, now, keeper: at.keeper, manager: at.manager });
  await dropped(at, TWO_A_WEEK);
});

/** The line of the screw in a proposal worked out now. */
async function line() {
  done(await proposeRestock({ db: at.db, now: now(), newId: at.newId, person: at.keeper }));
  const found = await latestProposal(at.db);
  return found?.lines.find(({ itemId }) => itemId === at.screw.id) ?? null;
}

/** So many pieces of the screw come on consignment; answers their heap. */
async function consigned(quantity: number): Promise<string> {
  return at.db.tx(async (write) => {
    const kind = { itemId: at.screw.id, form: 'unsterile' as const, lot: 'CONS', useBy: null };
    const heap = { ...kind, owner: 'consignment' as const, lenderId: OWNER, placeId: 'place_general-stores' };
    const id = await putOnHeap(write, { ...heap, quantity, newId: at.newId });
    const on = now();
    await recordMoves(write, [
      { act: 'received', ...kind, quantity, to: { stockId: id }, personId: null, doneAt: on, enteredAt: on },
    ]);
    return id;
  });
}

async function damaged(heap: string, pieces: number): Promise<void> {
  const [row] = await at.db.read.select().from(stock).where(eq(stock.id, heap));
  done(
    await adjustStock({
      ...{ db: at.db, now: now(), newId: at.newId, person: at.keeper, stockId: stockId.parse(heap) },
      ...{ baseRevision: row?.revision ?? 0, reason: 'damaged', pieces, note: '' },
    }),
  );
}

it('consigned pieces are at hand, and what a usage order asks to be replaced is on order and never bought', async () => {
  const before = await line();
  const wanted = before?.proposed ?? 0;
  expect(wanted).toBeGreaterThan(0);
  const heap = await consigned(wanted);
  // as good as ours: with them on the shelf nothing is lacking
  expect((await line())?.proposed ?? 0).toBe(0);
  await damaged(heap, wanted);
  const waiting = await line();
  expect(waiting?.proposed).toBeGreaterThan(0);
  expect(waiting?.sentence).toContain(`${wanted} used from consignment`);

  const order = await teller.made();
  await teller.choose(order, true);
  // asked for by nobody yet: made is not approved
  expect((await line())?.onOrder).toBe(0);
  done(await approveUsageOrder(await teller.at(order)));
  const { number } = await teller.order(order);
  const found = await line();
  expect(found?.proposed ?? 0).toBe(0);
  // the whole need is covered by the replacement, so the line is not even worth a look
  expect(found).toBeNull();

  // in part, and the line says so
  await lackMore(2);
  const more = await line();
  expect(more?.onOrder).toBe(wanted);
  expect(more?.sentence).toContain(`${wanted} are replaced by the owner (${number}), not bought`);

  // what comes answers the order that asked for it
  await consigned(wanted);
  expect((await line())?.onOrder ?? 0).toBe(0);
});

/** The slot lacks so many more, and forty besides. */
async function lackMore(pieces: number): Promise<void> {
  await at.db.tx(async (write) => {
    const [expected] = await write
      .select({ expected: configurationLines.expected })
      .from(configurationLines)
      .where(eq(configurationLines.id, at.screw.lineId));
    await write
      .update(setContents)
      .set({ found: Math.max(0, (expected?.expected ?? 0) - pieces - 40) })
      .where(eq(setContents.lineId, at.screw.lineId));
  });
}

it('what is not to be replaced, or no longer expected, is bought like anything else', async () => {
  const wanted = (await line())?.proposed ?? 0;
  const heap = await consigned(wanted);
  await damaged(heap, 2);
  const order = await teller.sent(false);
  expect((await line())?.onOrder ?? 0).toBe(0);
  await damaged(heap, wanted - 2);
  const second = await teller.sent(true);
  expect((await line())?.onOrder ?? wanted - 2).toBe(wanted - 2);
  done(await settleUsageOrder({ ...(await teller.at(second)), because: 'They no longer make it.' }));
  expect((await line())?.onOrder).toBe(0);
  expect((await line())?.proposed).toBe(wanted);
  expect(order).not.toBe(second);
});

it('an item kept on consignment by its terms is never bought, and the line says what its owner is to be asked for', async () => {
  const wanted = (await line())?.proposed ?? 0;
  const terms = {
    leadDays: null,
    leadSdDays: null,
    reviewDays: null,
    servicePercent: null,
    shelfLifeDays: null,
  };
  const state = (consigned_: boolean | null, baseRevision: number) =>
    saveSupplyTerms({
      ...{ db: at.db, now: now(), newId: at.newId, person: at.keeper },
      entry: {
        of: { kind: 'item', id: at.screw.id },
        baseRevision,
        terms: { ...terms, consigned: consigned_ },
      },
    });
  done(await state(true, 0));
  const found = await line();
  expect(found?.proposed).toBe(0);
  expect(found?.sentence).toContain('never bought');
  expect(found?.sentence).toContain(`${wanted} more should be at hand`);
  // its own terms outrank its maker's
  done(
    await saveSupplyTerms({
      ...{ db: at.db, now: now(), newId: at.newId, person: at.keeper },
      entry: {
        of: { kind: 'maker', id: 'maker_carrowby' },
        baseRevision: 1,
        terms: { ...terms, leadDays: 5, leadSdDays: 2, shelfLifeDays: 1_825, consigned: true },
      },
    }),
  );
  done(await state(false, 1));
  expect((await line())?.proposed).toBe(wanted);
});
