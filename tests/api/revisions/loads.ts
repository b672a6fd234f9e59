import { cycleFile } from '../../fixtures/cycleFile';
import type { Attempt, Desk, Rows } from './desk';
import { first, proof, seen } from './desk';

const TECHNICIAN = 'person_wren-adeyemi';
const LEAD = 'person_maurice-oduya';
const STERILISER = 'steriliser_2';

async function begun(desk: Desk): Promise<string> {
  const technician = await desk.as(TECHNICIAN);
  const { items } = await technician.done('GET /api/v1/sterilisers');
  const programme = items.find(({ id }) => id === STERILISER)?.programmes[0]?.name ?? '';
  const body = { steriliserId: STERILISER, programme };
  return (await technician.done('POST /api/v1/loads', { body })).id;
}

async function onLoad(desk: Desk, id: string, body: object, more: Partial<Attempt> = {}): Promise<Attempt> {
  const revision = await seen(desk, 'GET /api/v1/loads/{id}', { id });
  return { by: TECHNICIAN, path: { id }, body, revision, ...more };
}

/** The load that these rows make up, run and judge, one after the other. */
async function ours(desk: Desk): Promise<string> {
  const technician = await desk.as(TECHNICIAN);
  const { items } = await technician.done('GET /api/v1/loads', { query: { limit: 200 } });
  const mine = items.find(({ steriliser, state }) => steriliser.id === STERILISER && state !== 'accepted');
  return mine?.id ?? begun(desk);
}

async function packed(desk: Desk): Promise<string> {
  const technician = await desk.as(TECHNICIAN);
  const { items } = await technician.done('GET /api/v1/packs', { query: { set: 'set_dfb-03' } });
  return first(items, 'pack').id;
}

const indicator = (kind: string, result: string) => ({
  entry: { kind, lot: 'CI-44', useBy: '2027-06-30', position: null, result },
});

export const LOADS: Rows = {
  'POST /api/v1/loads/{id}/packs': async (desk) =>
    onLoad(desk, await begun(desk), { packId: await packed(desk), take: 'in', copy: null }),
  'POST /api/v1/loads/{id}/start': async (desk) => onLoad(desk, await ours(desk), { cycleNumber: '77' }),
  'POST /api/v1/loads/{id}/end': async (desk) => onLoad(desk, await ours(desk), {}),
  'POST /api/v1/loads/{id}/cycle': async (desk) =>
    onLoad(desk, await ours(desk), { text: cycleFile(), fileName: 'c.csv', dryRun: false }),
  'POST /api/v1/loads/{id}/indicators': async (desk) => {
    const id = await ours(desk);
    const technician = await desk.as(TECHNICIAN);
    for (const kind of ['chemical', 'printedRecord'] as const)
      await technician.done('POST /api/v1/loads/{id}/indicators', {
        path: { id },
        body: { baseRevision: null, ...indicator(kind, 'passed') } as never,
      });
    return onLoad(desk, id, indicator('biological', 'pending'));
  },
  'POST /api/v1/loads/{id}/results': async (desk) => {
    const id = await ours(desk);
    const load = await (await desk.as(TECHNICIAN)).done('GET /api/v1/loads/{id}', { path: { id } });
    const pending = load.facts.indicators.find(({ result }) => result === 'pending');
    return onLoad(desk, id, { indicatorId: pending?.id ?? '', result: 'passed' });
  },
  'POST /api/v1/loads/{id}/unload': async (desk) =>
    onLoad(desk, await ours(desk), { packId: await packed(desk), as: 'sound' }),
  'POST /api/v1/loads/{id}/accept': async (desk) =>
    onLoad(
      desk,
      await ours(desk),
      { reason: '', setsPlaceId: 'place_store-a', pouchesPlaceId: null, exception: null, proof },
      { by: LEAD },
    ),
  'POST /api/v1/loads/{id}/reject': async (desk) =>
    onLoad(
      desk,
      'load_demo-1537',
      { reason: 'The printed record shows a pressure fault.', setsGo: 'held', proof },
      { by: LEAD },
    ),
  'POST /api/v1/loads/{id}/give-up': async (desk) => onLoad(desk, await begun(desk), {}),
  'POST /api/v1/packs/{id}/undo': async (desk) => {
    const technician = await desk.as(TECHNICIAN);
    const { items } = await technician.done('GET /api/v1/catalogue/items', { query: { kind: 'screw' } });
    const id = 'pack_pouch-by-api';
    await technician.done('POST /api/v1/packs', {
      body: { id, itemId: first(items, 'screw').id, lot: 'LOT-7', proof },
    });
    return {
      ...{ by: TECHNICIAN, path: { id }, body: { reason: 'The wrong screw was in it.' } },
      revision: await seen(desk, 'GET /api/v1/packs/{id}', { id }),
    };
  },
};
