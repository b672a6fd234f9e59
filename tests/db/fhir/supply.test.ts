import { expect, it } from 'vitest';
import { approveRestock } from '@/db/operations/restock/approve-restock';
import { closeOrder } from '@/db/operations/restock/close-order';
import { proposeRestock } from '@/db/operations/restock/propose-restock';
import { receiveOrder } from '@/db/operations/restock/receive-order';
import { turnRestockDown } from '@/db/operations/restock/turn-restock-down';
import { findOrder } from '@/db/queries/restock/orders';
import { latestProposal } from '@/db/queries/restock/proposal';
import { orderId, restockId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import { fitsSchema } from '../../published/fhir-r5/schema';
import { faultsOf } from '../../published/fhir-r5/validate';
import { dropped, NOW, type Restocking, restocking, TWO_A_WEEK } from '../restock/hospital';
import { allOf, FRAME, idsFound, type Json, read } from './service';

const PLACE = 'place_implant-cupboard';
const LATER = '2026-01-19T10:00:00.000Z';

function done<T>(outcome: Outcome<T, unknown>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal.problems));
  return outcome.value;
}

async function propose(at: Restocking, now: string) {
  done(await proposeRestock({ db: at.db, now, newId: at.newId, person: at.keeper }));
  const found = await latestProposal(at.db);
  if (!found) throw new Error('it was just proposed');
  return found;
}

const deciding = (at: Restocking, { id, revision }: { id: string; revision: number }, entry: unknown) => ({
  ...{ db: at.db, now: NOW, newId: at.newId, person: at.manager, entry },
  ...{ restockId: restockId.parse(id), baseRevision: revision },
});

async function atOrder(at: Restocking, id: string, entry: unknown, now = LATER) {
  const found = await findOrder(at.db, id);
  if (!found) throw new Error('there is no such order');
  return {
    ...{ db: at.db, now, newId: at.newId, person: at.keeper, entry },
    ...{ orderId: orderId.parse(id), baseRevision: found.revision },
  };
}

/** Each of them is found by the status it is given with, and by no other: the table is in the query as well. */
async function foundByTheirStatus(at: Restocking): Promise<Json[]> {
  const all = await allOf(at.db, 'SupplyRequest');
  for (const status of ['draft', 'active', 'completed', 'cancelled'])
    expect((await idsFound(at.db, 'SupplyRequest', { status, _count: '200' })).sort()).toEqual(
      all
        .filter((one) => one.status === status)
        .map(({ id }) => id)
        .sort(),
    );
  // one of each status is like the others
  const kinds = [...new Map(all.map((one) => [one.status, one])).values()];
  expect(kinds.flatMap((one) => faultsOf(one))).toEqual([]);
  expect(kinds.filter((one) => !fitsSchema(one))).toEqual([]);
  return all;
}

it('a request is a draft until somebody decides, active until all came, and what came of it leads back', async () => {
  const at = await restocking();
  const { db, screw } = at;
  await dropped(at, TWO_A_WEEK);
  const proposal = await propose(at, NOW);
  const line = proposal.lines.find(({ itemId }) => itemId === screw.id);
  const id = line?.id.replace('_', '.') ?? '';
  expect(await foundByTheirStatus(at)).toHaveLength(proposal.lines.length);
  const request = async () => (await read(db, 'SupplyRequest', id)).body;
  expect(await request()).toMatchObject({
    status: 'draft',
    quantity: { value: line?.proposed },
    authoredOn: NOW,
    meta: { lastUpdated: NOW },
    reason: [{ concept: { text: line?.sentence } }],
  });
  expect(await request()).not.toHaveProperty('basedOn');

  const changes = proposal.lines.flatMap(({ id: lineId, itemId }) =>
    itemId === screw.id
      ? [{ lineId, pieces: 15, because: 'As many as we need for this' }]
      : [{ lineId, pieces: 0, because: 'Not in this order, for the test' }],
  );
  const { orders } = done(await approveRestock(deciding(at, proposal, { changes })));
  const order = orders[0]?.id ?? '';
  const number = (await findOrder(db, order))?.number ?? '';
  expect(await request()).toMatchObject({
    status: 'active',
    quantity: { value: 15 },
    basedOn: [{ identifier: { system: `${FRAME.base}/identifiers/order-number`, value: number } }],
  });
  expect(await idsFound(db, 'SupplyRequest', { order: number })).toEqual([id]);
  // nothing was ordered of the others
  expect((await foundByTheirStatus(at)).filter(({ status }) => status === 'cancelled')).toHaveLength(
    proposal.lines.length - 1,
  );

  const [ordered] = (await findOrder(db, order))?.lines ?? [];
  const part = (quantity: number, lot: string) => ({
    ...{ lineId: ordered?.id, quantity, lot, useBy: '2030-06-30' },
    form: ordered?.suppliedSterile ? 'sterilePacked' : 'unsterile',
  });
  done(await receiveOrder(await atOrder(at, order, { placeId: PLACE, parts: [part(5, 'L-77')] })));
  expect(await request()).toMatchObject({ status: 'active', meta: { lastUpdated: LATER } });
  const last = '2026-01-21T10:00:00.000Z';
  done(await receiveOrder(await atOrder(at, order, { placeId: PLACE, parts: [part(10, 'L-78')] }, last)));
  expect(await request()).toMatchObject({ status: 'completed', meta: { lastUpdated: last } });
  await foundByTheirStatus(at);
  expect(await idsFound(db, 'SupplyRequest', { _lastUpdated: 'ge2026-01-21', date: 'lt2026-01-21' })).toEqual(
    [id],
  );

  const came = await allOf(db, 'SupplyDelivery');
  expect(came.flatMap((one) => faultsOf(one))).toEqual([]);
  expect(came.map((one) => one.suppliedItem[0].quantity.value).sort()).toEqual([10, 5]);
  for (const one of came) expect(one.basedOn).toEqual([{ reference: `SupplyRequest/${id}` }]);
  const [first] = await idsFound(db, 'SupplyDelivery', { lot: 'L-77' });
  const { body } = await read(db, 'SupplyDelivery', first ?? '');
  const [, heap] = body.suppliedItem[0].itemReference.reference.split('/');
  expect((await read(db, 'InventoryItem', heap)).body).toMatchObject({ instance: { lotNumber: 'L-77' } });
});

it('a request that comes to nothing is cancelled: closed before all came, turned down, or superseded', async () => {
  const at = await restocking();
  await dropped(at, TWO_A_WEEK);
  const earlier = await propose(at, NOW);
  const proposal = await propose(at, NOW);
  const superseded = await foundByTheirStatus(at);
  expect(superseded.filter(({ status }) => status === 'cancelled')).toHaveLength(earlier.lines.length);
  const { orders } = done(await approveRestock(deciding(at, proposal, { changes: [] })));
  const order = orders[0]?.id ?? '';
  done(await closeOrder(await atOrder(at, order, { because: 'The maker can’t send it before summer' })));
  const lines = (await findOrder(at.db, order))?.lines.length ?? 0;
  expect(lines).toBeGreaterThan(0);
  const statuses = (await foundByTheirStatus(at)).map(({ status }) => status);
  expect(statuses.filter((status) => status === 'cancelled').length).toBeGreaterThanOrEqual(
    earlier.lines.length + lines,
  );
  expect(statuses).not.toContain('completed');

  const third = await propose(at, '2026-01-20T09:00:00.000Z');
  done(await turnRestockDown(deciding(at, third, { because: 'The budget year ends next week' })));
  expect((await foundByTheirStatus(at)).filter(({ status }) => status === 'draft')).toEqual([]);
});
