import { type Desk, first, proof, proofOf, type Rows, seen } from './desk';

const KEEPER = 'person_dilys-harrow';
const MANAGER = 'person_gwen-sallis';
const LENDER = 'lender_sallowfen';

async function proposed(desk: Desk) {
  const keeper = await desk.as(KEEPER);
  const { id } = await keeper.done('POST /api/v1/restock');
  return { path: { id }, revision: await seen(desk, 'GET /api/v1/restock/{id}', { id }) };
}

async function order(desk: Desk) {
  const keeper = await desk.as(KEEPER);
  const { items } = await keeper.done('GET /api/v1/restock/orders', { query: { limit: 200 } });
  const id = first(items, 'order').id;
  return keeper.done('GET /api/v1/restock/orders/{id}', { path: { id } });
}

async function heap(desk: Desk) {
  const keeper = await desk.as(KEEPER);
  const { items } = await keeper.done('GET /api/v1/stock', { query: { limit: 200 } });
  return first(
    items.filter(({ pieces, because }) => (pieces?.free ?? 0) > 2 && because === null),
    'heap',
  );
}

/** Consigned pieces on the shelf, in a lot of their own. */
async function consigned(desk: Desk, nth: number) {
  const keeper = await desk.as(KEEPER);
  const { itemId, code, placeId } = await heap(desk);
  const lot = `REV-${nth}`;
  await keeper.done('POST /api/v1/deliveries', {
    body: {
      ...{
        id: `delivery_rev-${nth}`,
        supplier: 'Sallowfen',
        reference: `DN ${nth}`,
        arrivedOn: '2026-01-14',
      },
      lines: [
        {
          ...{
            id: `deliveryLine_rev-${nth}`,
            itemId,
            placeId,
            form: 'sterilePacked',
            lot,
            useBy: '2028-01-31',
          },
          ...{ count: 2, unit: 'pieces', owner: 'consignment', lenderId: LENDER, held: null },
          ...{ useByReadAgain: false, scanId: null },
        },
      ],
    },
  });
  const { items } = await keeper.done('GET /api/v1/stock', { query: { limit: 200, item: itemId } });
  return {
    code,
    lot,
    heap: first(
      items.filter((one) => one.lot === lot),
      'consigned heap',
    ),
  };
}

export const SUPPLY: Rows = {
  'PUT /api/v1/lenders/{id}': async (desk) => {
    const { items } = await (await desk.as(KEEPER)).done('GET /api/v1/lenders');
    const { id, name, revision } = first(items, 'lender');
    return { by: KEEPER, path: { id }, body: { inUse: true, entry: { name, note: 'Again' } }, revision };
  },
  'PUT /api/v1/places/{id}': async (desk) => {
    const { items } = await (await desk.as(MANAGER)).done('GET /api/v1/places');
    const { id, name, metres, revision } = first(items, 'place');
    return { by: MANAGER, path: { id }, body: { name: `${name} here`, metres, inUse: true }, revision };
  },
  'POST /api/v1/loans/{id}': async (desk) => {
    const id = 'loan_demo-4477';
    const asked = { act: 'callOff', because: 'The case was cancelled.' };
    return {
      ...{ by: KEEPER, act: 'keepLoans', path: { id }, body: { asked } },
      revision: await seen(desk, 'GET /api/v1/loans/{id}', { id }),
    };
  },
  'POST /api/v1/restock/{id}/turn-down': async (desk) => ({
    ...(await proposed(desk)),
    ...{ by: MANAGER, body: { entry: { because: 'It is too early in the month.' } } },
  }),
  'POST /api/v1/restock/{id}/approve': async (desk) => ({
    ...(await proposed(desk)),
    ...{ by: MANAGER, body: { entry: { changes: [] } } },
  }),
  'POST /api/v1/restock/orders/{id}/receive': async (desk) => {
    const { id, revision, lines } = await order(desk);
    const { id: lineId, packOf: quantity, suppliedSterile } = first(lines, 'line of the order');
    const { placeId } = await heap(desk);
    const form = suppliedSterile ? 'sterilePacked' : 'unsterile';
    const part = { lineId, quantity, lot: 'LOT-R', useBy: suppliedSterile ? '2028-01-31' : null, form };
    return { by: KEEPER, path: { id }, body: { entry: { placeId, parts: [part] } }, revision };
  },
  'POST /api/v1/restock/orders/{id}/close': async (desk) => {
    const { id, revision } = await order(desk);
    return { by: KEEPER, path: { id }, body: { entry: { because: 'No more of it comes.' } }, revision };
  },
  'POST /api/v1/restock/terms': async (desk) => {
    const { items } = await (await desk.as(KEEPER)).done('GET /api/v1/restock/terms');
    const { of, revision } = first(items, 'terms of supply');
    const terms = {
      leadDays: 9,
      leadSdDays: null,
      reviewDays: null,
      servicePercent: null,
      shelfLifeDays: null,
    };
    return { by: KEEPER, path: {}, body: { of: { kind: of.kind, id: of.id }, terms }, revision };
  },
  'POST /api/v1/stock/{id}': async (desk) => {
    const { id, placeId, revision } = await heap(desk);
    const { items } = await (await desk.as(KEEPER)).done('GET /api/v1/places', { query: { limit: 200 } });
    const other = items.find((one) => one.id !== placeId)?.id;
    const body = { kind: 'move', pieces: 1, placeId: other };
    return { by: KEEPER, act: 'moveStock', path: { id }, body, revision };
  },
  'POST /api/v1/stock/{id} holding': async (desk) => {
    const { id, revision } = await heap(desk);
    const body = { kind: 'hold', pieces: 1, because: 'wrongLabel', note: 'Its label is torn off.' };
    return { by: KEEPER, act: 'holdStock', path: { id }, body, revision };
  },
  'POST /api/v1/stock-counts/{id}/acts': async (desk) => {
    const { placeId } = await heap(desk);
    const id = 'stockCount_rev-1';
    const keeper = await desk.as(KEEPER);
    await keeper.done('POST /api/v1/stock-counts', { body: { countId: id, placeId, countClass: 'all' } });
    return {
      ...{ by: KEEPER, act: 'countStock', path: { id }, body: { kind: 'abandon' } },
      revision: await seen(desk, 'GET /api/v1/stock-counts/{id}', { id }, KEEPER),
    };
  },
  'POST /api/v1/consignment/orders/{id}': async (desk) => {
    const keeper = await desk.as(KEEPER);
    const { heap: one } = await consigned(desk, 1);
    await keeper.done('POST /api/v1/stock/{id}', {
      path: { id: one.id },
      body: {
        ...{ kind: 'adjust', baseRevision: one.revision, pieces: 1, reason: 'damaged' },
        ...{ note: 'It fell on the floor.', reasonId: null },
      },
    });
    const { waiting } = await keeper.done('GET /api/v1/consignment/owners/{id}', { path: { id: LENDER } });
    const id = 'usageOrder_rev-1';
    const body = { id, lenderId: LENDER, lines: waiting.length };
    await keeper.done('POST /api/v1/consignment/orders', { body });
    return {
      ...{ by: KEEPER, path: { id }, body: { act: { kind: 'withdraw', because: 'It was made too early.' } } },
      revision: await seen(desk, 'GET /api/v1/consignment/orders/{id}', { id }),
    };
  },
  'POST /api/v1/consignment/reconciliations/{id}': async (desk) => {
    const keeper = await desk.as(KEEPER);
    const { code, lot } = await consigned(desk, 2);
    const id = 'reconciliation_rev-1';
    const text = `Code;Lot;Quantity\n${code};${lot};1\n`;
    await keeper.done('POST /api/v1/consignment/reconciliations', {
      body: { id, lenderId: LENDER, how: 'list', listedOn: '2026-01-14', text },
    });
    const found = await keeper.done('GET /api/v1/consignment/reconciliations/{id}', { path: { id } });
    const because = 'Their list is of last week.';
    const lineId = first(
      found.lines.filter((line) => line.lot === lot),
      'difference',
    ).id;
    return {
      ...{ by: KEEPER, path: { id }, body: { act: { kind: 'explain', lineId, because } } },
      revision: await seen(desk, 'GET /api/v1/consignment/reconciliations/{id}', { id }),
    };
  },
  'POST /api/v1/recalls/{id}/close': async (desk) => {
    const { itemId } = await heap(desk);
    const id = 'recall_rev-1';
    const nell = 'person_nell-ashdown';
    await (await desk.as(nell)).done('POST /api/v1/recalls', {
      body: {
        ...{ recallId: id, of: { kind: 'item', itemId }, reason: 'A notice of the maker.' },
        ...{ noticeReference: 'N 1', isRehearsal: true, holdUnknown: false },
      },
    });
    const body = { because: 'All of it was found.', proof, second: proofOf(MANAGER) };
    return {
      ...{ by: nell, path: { id }, body },
      revision: await seen(desk, 'GET /api/v1/recalls/{id}', { id }, nell),
    };
  },
};
