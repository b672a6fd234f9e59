import type { Attempt, Desk, Row, Rows } from './desk';
import { first, proof, proofOf, seen } from './desk';

const LEAD = 'person_maurice-oduya';
const at = (desk: Desk, id: string) => seen(desk, 'GET /api/v1/sets/{id}', { id });

/** An act on one set of the demo, by the decontamination lead. */
const onSet =
  (id: string, body: object, more: Partial<Attempt> = {}): Row =>
  async (desk) => ({ by: LEAD, path: { id }, body, revision: await at(desk, id), ...more });

/** In this order: some are done with what the one before left. */
export const SETS: Rows = {
  'POST /api/v1/sets/{id}/receive': onSet('set_gen-03', {}),
  'POST /api/v1/sets/{id}/begin-wash': onSet('set_sfl-03', {}),
  'POST /api/v1/sets/{id}/end-wash': onSet('set_lfs-03', { seen: 'clean' }),
  'POST /api/v1/sets/{id}/hold': onSet('set_ben-01', {
    because: 'wrongLabel',
    note: 'The label names another set.',
  }),
  'POST /api/v1/sets/{id}/lift-hold': onSet('set_ben-01', {
    ...{ to: 'onBench', reason: 'A new label is made when it is packed.', proof },
  }),
  'POST /api/v1/sets/{id}/move': async (desk) => {
    const lead = await desk.as(LEAD);
    const id = 'set_can-01';
    const { place } = await lead.done('GET /api/v1/sets/{id}', { path: { id } });
    const { items } = await lead.done('GET /api/v1/places', { query: { limit: 200 } });
    const other = items.find((one) => one.id !== place?.id);
    return { by: LEAD, path: { id }, body: { placeId: other?.id ?? '' }, revision: await at(desk, id) };
  },
  'POST /api/v1/sets/{id}/open': onSet('set_lfl-01', {}),
  'POST /api/v1/sets/{id}/reprocess': onSet('set_dfb-01', { reason: 'It was dropped on the floor.' }),
  'POST /api/v1/sets/{id}/send': async (desk) => {
    const lead = await desk.as(LEAD);
    const { items } = await lead.done('GET /api/v1/sets', { query: { limit: 200 } });
    const ready = items.filter(({ step, promisedTo }) => step === 'inSterileStore' && promisedTo.length > 0);
    const { id, promisedTo, revision } = first(ready, 'set that is promised and ready');
    const caseId = first(promisedTo, 'case it is promised to').caseId;
    return { by: LEAD, path: { id }, body: { caseId }, revision };
  },
  'POST /api/v1/sets/{id}/withdraw': onSet('set_drt-01', { reason: 'Its container leaks.' }),
  'POST /api/v1/sets/{id}/bring-back': onSet('set_drt-01', { reason: 'Its container was repaired.' }),
  'POST /api/v1/sets/{id}/return-to-bench': onSet('set_drt-04', {}),
  'POST /api/v1/sets/{id}/ask-decision': onSet('set_drt-04', {}),
  'POST /api/v1/sets/{id}/short-decision': onSet(
    'set_drt-04',
    {
      id: 'decision_by-api',
      reason: 'No other set is back before the case.',
      caseId: 'case_lm-26-9rtb',
      substitutes: [],
      proofs: [
        { as: 'theatreLead', proof: proofOf('person_gwen-sallis') },
        { as: 'operatingSurgeon', proof: proofOf('person_ines-halloran') },
      ],
    },
    { here: true },
  ),
  'POST /api/v1/sets/{id}/pack': onSet(
    'set_drt-04',
    {
      ...{ id: 'pack_by-api', barrier: 'container', weighedGrams: null, shortReason: null },
      ...{ massReason: null, proof },
    },
    { here: true },
  ),
  // after the version of another row came into force
  'POST /api/v1/sets/{id}/refit': onSet('set_lfl-01', {}),
};
