import { expect, it } from 'vitest';
import { recordMoves } from '@/db/operations/pieces/record-moves';
import { traceLot } from '@/db/queries/trace/lot';
import { recallReach } from '@/db/queries/trace/reach';
import { itemId } from '@/lib/identity/ids';
import { atTable, fromSlot } from '../usage/usageDesk';

const LOT = 'LOT-READ-AT-THE-TABLE';
const AT = '2026-01-13T08:00:00.000Z';

it('what a corrected record of use took back is in no trace, and what is right is', async () => {
  const desk = await atTable();
  const slot = await desk.slot(3);
  const { setId, lineId } = slot;
  await desk.db.tx((write) =>
    recordMoves(write, [
      {
        act: 'refilled',
        itemId: slot.itemId,
        lot: LOT,
        useBy: null,
        quantity: 1,
        to: { setId, lineId },
        personId: null,
        doneAt: AT,
        enteredAt: AT,
      },
      {
        act: 'notFound',
        itemId: slot.itemId,
        lot: null,
        useBy: null,
        quantity: 1,
        from: { setId, lineId },
        personId: null,
        doneAt: AT,
        enteredAt: AT,
      },
    ]),
  );
  const lot = { kind: 'read', lot: LOT, useBy: null } as const;
  const wrong = await desk.entered(fromSlot(slot, 'implanted', { lot }));
  await desk.close();
  const cases = async () =>
    (await traceLot(desk.db, slot.itemId, LOT))?.cases.rows.map(({ id, standing }) => ({
      caseId: id,
      standing,
    }));
  expect(await cases()).toEqual([{ caseId: desk.caseId, standing: 'confirmed' }]);
  await desk.entered(desk.takenBack(wrong, 'It was another screw.'));
  // it lies in the slot again, and no case had it
  expect(await cases()).toEqual([]);
  const ofItem = await recallReach(desk.db.read, { kind: 'item', itemId: itemId.parse(slot.itemId) });
  expect(ofItem?.cases.filter(({ caseId }) => caseId === desk.caseId)).toEqual([]);
  await desk.entered(fromSlot(slot, 'droppedOrDamaged', { lot, because: 'It fell.' }));
  expect(await cases()).toEqual([{ caseId: desk.caseId, standing: 'confirmed' }]);
});
