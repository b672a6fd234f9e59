import { vi } from 'vitest';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import type { DemoPerson } from '@/seed/hospital/people';
import type { ApiServer } from '../server';

/** A hospital that people have signed in to. */
interface Busy extends Pick<ApiServer, 'token'> {
  as(person: DemoPerson): ReturnType<ApiServer['asPerson']>;
}

/** Lists of which the demo has nothing, and to which two things of theirs are made here. */
export const MADE_TWICE = [
  '/api/v1/consignment/orders',
  '/api/v1/emergency',
  '/api/v1/imports',
  '/api/v1/notices',
  '/api/v1/use-records',
];

/** What the demo has none of before somebody does something, done through the API itself. */
export async function madeBusy(here: Busy): Promise<void> {
  const administrator = await here.as('person_edda-winslow');
  await administrator.done('POST /api/v1/people/workstations', { body: { name: 'Bench 9' } });
  await here.token('person_dilys-harrow', ['keepLenders']);
  const keeper = await here.as('person_dilys-harrow');
  const lead = await here.as('person_nell-ashdown');
  const manager = await here.as('person_gwen-sallis');
  const [heap] = (await keeper.done('GET /api/v1/stock', { query: { limit: 1 } })).items;
  const [lender] = (await keeper.done('GET /api/v1/lenders', { query: { limit: 1 } })).items;
  if (!heap || !lender) throw new Error('the demo has no heap, or no lender');
  await keeper.done('POST /api/v1/deliveries', {
    body: {
      id: 'delivery_api-1',
      supplier: 'Sallowfen',
      reference: 'DN 1',
      arrivedOn: '2026-01-14',
      lines: [
        {
          ...{ id: 'deliveryLine_api-1', itemId: heap.itemId, placeId: heap.placeId, form: 'sterilePacked' },
          ...{ lot: 'API-1', useBy: '2028-01-31', count: 2, unit: 'pieces', owner: 'consignment' },
          ...{ lenderId: lender.id, held: null, useByReadAgain: false, scanId: null },
        },
      ],
    },
  });
  await keeper.done('POST /api/v1/consignment/reconciliations', {
    body: {
      ...{ id: 'reconciliation_api-1', lenderId: lender.id, how: 'list', listedOn: '2026-01-14' },
      text: `Code;Lot;Quantity\n${heap.code};API-1;2\n`,
    },
  });
  await keeper.done('POST /api/v1/stock-counts', {
    body: { countId: 'stockCount_api-1', placeId: heap.placeId, countClass: 'all' },
  });
  const { id: restockId } = await keeper.done('POST /api/v1/restock');
  const proposal = await manager.done('GET /api/v1/restock/{id}', { path: { id: restockId } });
  await manager.done('POST /api/v1/restock/{id}/approve', {
    path: { id: restockId },
    body: { baseRevision: proposal.revision, entry: { changes: [] } },
  });
  await lead.done('POST /api/v1/recalls', {
    body: {
      recallId: 'recall_api-1',
      of: { kind: 'item', itemId: heap.itemId },
      ...{ reason: 'A notice of the maker.', noticeReference: 'N 1', isRehearsal: true, holdUnknown: false },
    },
  });
  const plates = (await manager.done('GET /api/v1/catalogue/items', { query: { kind: 'plate' } })).items;
  const screws = (await manager.done('GET /api/v1/catalogue/items', { query: { kind: 'screw' } })).items;
  await manager.done('POST /api/v1/fit/exceptions', {
    body: {
      draft: {
        ...{ relation: 'seats', answer: 'deny', sentence: 'They were seen to jam.' },
        ...{ firstItemId: screws[0]?.id ?? '', secondItemId: plates[0]?.id ?? '' },
        source: { kind: 'commonPractice' },
      },
    },
  });
  await usedTwice(here);
  await orderedTwice(here, { itemId: heap.itemId, lenderId: lender.id });
  await told(here);
  await broughtInTwice(here);
  await takenTwice(here);
}

/** A minute passes between two things, as it does when people do them. */
const later = () => {
  vi.setSystemTime(Date.now() + 60_000);
  return new Date().toISOString();
};

/** Two cases get a set that is promised to them, and an implant of each stays with the patient. */
async function usedTwice({ as }: Busy): Promise<void> {
  const lead = await as('person_maurice-oduya');
  const scrub = await as('person_ruth-okonjo');
  const sets = (await lead.done('GET /api/v1/sets', { query: { limit: 200 } })).items;
  const [screws, used]: [Set<string>, Set<string>] = [new Set(), new Set()];
  for await (const { id } of lead.every('GET /api/v1/catalogue/items', { query: { kind: 'screw' } }))
    screws.add(id);
  for (const { id, step, revision, promisedTo } of sets) {
    const caseId = promisedTo.find((one) => !used.has(one.caseId))?.caseId;
    if (step !== 'inSterileStore' || caseId === undefined) continue;
    await lead.done('POST /api/v1/sets/{id}/send', {
      path: { id },
      body: { baseRevision: revision, caseId },
    });
    const { slots } = await scrub.done('GET /api/v1/cases/{id}/use', { path: { id: caseId } });
    const slot = slots.find(
      ({ setId, itemId, recorded }) => setId === id && screws.has(itemId) && (recorded ?? 0) > 0,
    );
    if (!slot) continue;
    const act = {
      kind: 'piece' as const,
      source: { kind: 'slot' as const, setId: id, lineId: slot.lineId },
      ...{ itemId: slot.itemId, quantity: 1, outcome: 'implanted' as const, lostAt: null, place: null },
      ...{ lot: { kind: 'setAndLoad' as const }, despite: [], note: null, because: null },
    };
    const entry = { id: `entry_busy-${used.size + 1}`, act, scanId: null, doneAt: later() };
    const { delivered } = await scrub.done('POST /api/v1/cases/{id}/use/entries', {
      path: { id: caseId },
      body: { entries: [{ entry, session: scrub.mark }] },
    });
    if (delivered.some(({ ok }) => !ok)) throw new Error(JSON.stringify(delivered));
    used.add(caseId);
    if (used.size === 2) return;
  }
  throw new Error('the demo has no two sets with implants that are promised and ready');
}

/** Two consigned pieces fall on the floor, one after the other, and their owner is told of each. */
async function orderedTwice(
  { as }: Busy,
  { itemId, lenderId }: { itemId: string; lenderId: string },
): Promise<void> {
  // not the keeper, who counts that place
  const manager = await as('person_gwen-sallis');
  for (const nth of [1, 2]) {
    later();
    const heaps = (await manager.done('GET /api/v1/stock', { query: { item: itemId } })).items;
    const heap = heaps.find(({ lot, owner }) => lot === 'API-1' && owner === 'consignment');
    if (!heap) throw new Error('nothing consigned lies there');
    await manager.done('POST /api/v1/stock/{id}', {
      path: { id: heap.id },
      body: {
        ...{ kind: 'adjust', baseRevision: heap.revision, pieces: 1, reason: 'damaged' },
        ...{ note: 'It fell on the floor.', reasonId: null },
      },
    });
    const owner = await manager.done('GET /api/v1/consignment/owners/{id}', { path: { id: lenderId } });
    const path = { id: `usageOrder_busy-${nth}` };
    await manager.done('POST /api/v1/consignment/orders', {
      body: { id: path.id, lenderId, lines: owner.waiting.length },
    });
    // the next is made once this one is over
    const { revision } = await manager.done('GET /api/v1/consignment/orders/{id}', { path });
    const act = { kind: 'withdraw' as const, because: 'It was made too early.' };
    if (nth === 1)
      await manager.done('POST /api/v1/consignment/orders/{id}', {
        path,
        body: { baseRevision: revision, act },
      });
  }
}

/** A technician holds two sets, and is told of each that the hold was lifted. */
async function told({ as }: Busy): Promise<void> {
  const technician = await as('person_wren-adeyemi');
  const lead = await as('person_maurice-oduya');
  for (const id of ['set_can-01', 'set_mft-01']) {
    later();
    const path = { id };
    const revision = async () => (await lead.done('GET /api/v1/sets/{id}', { path })).revision;
    await technician.done('POST /api/v1/sets/{id}/hold', {
      path,
      body: { baseRevision: await revision(), because: 'wrongLabel', note: 'It names another set.' },
    });
    await lead.done('POST /api/v1/sets/{id}/lift-hold', {
      path,
      body: {
        ...{ baseRevision: await revision(), to: 'onBench', reason: 'It gets a new label.' },
        proof: { secret: DEMO_PASSWORD },
      },
    });
  }
}

/** Two lists of people come in, each as it was tried. */
async function broughtInTwice({ as }: Busy): Promise<void> {
  const administrator = await as('person_edda-winslow');
  for (const name of ['Iris Penhallow', 'Moss Arkwright']) {
    later();
    const given = {
      file: Buffer.from(`Name;Role\n${name};Surgeon\n`).toString('base64'),
      choices: {
        ...{ sheet: null, encoding: null, columns: {}, dateOrder: null, decimal: null, repaired: [] },
        ...{ kept: [], empty: 'keep' as const, newMakers: [], more: null, fewer: null, note: '' },
      },
    };
    const path = { list: 'people' };
    const { seen } = await administrator.done('POST /api/v1/exchange/{list}', {
      path,
      body: { ...given, seen: null },
    });
    await administrator.done('POST /api/v1/exchange/{list}', { path, body: { ...given, seen } });
  }
}

/** Two sets are taken for an emergency each, as it was shown. */
async function takenTwice({ as }: Busy): Promise<void> {
  const technician = await as('person_wren-adeyemi');
  for (const take of ['SFL-05', 'SFL-01']) {
    const by = new Date(Date.parse(later()) + 3_600_000).toISOString();
    const asked = { region: 'ankle', side: 'left', plan: 'unknown', by, surgeon: 'person_tobias-wray', take };
    const { shown } = await technician.done('GET /api/v1/emergency/taking', { query: asked });
    await technician.done('POST /api/v1/emergency', { body: { asked, shown } });
  }
}
