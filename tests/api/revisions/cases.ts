import type { DemoPerson } from '@/seed/hospital/people';
import { type Desk, first, proof, type Row, type Rows, seen } from './desk';

const MANAGER = 'person_gwen-sallis';
const TECHNICIAN = 'person_wren-adeyemi';
const CHECKER = 'person_tomas-birkett';

const onCase =
  (id: string, body: object): Row =>
  async (desk) => ({
    ...{ by: MANAGER, path: { id }, body },
    revision: await seen(desk, 'GET /api/v1/cases/{id}', { id }),
  });

/** The case whose kit is fetched, checked, issued and taken over, one row after the other. */
const KIT = { id: 'case_lm-26-c6wn' };
const onKit = async (desk: Desk, body: object = {}, by: typeof TECHNICIAN = TECHNICIAN) => ({
  ...{ by, path: KIT, body },
  revision: await seen(desk, 'GET /api/v1/cases/{id}/kit/list', KIT),
});

async function lines(desk: Desk) {
  const technician = await desk.as(TECHNICIAN);
  const list = await technician.done('GET /api/v1/cases/{id}/kit/list', { path: KIT });
  return list.lines.map(({ kind, key, wanted }, at) => ({
    at,
    wanted,
    thing:
      kind === 'set'
        ? { kind: 'set' as const, setId: key, packId: null }
        : { kind: 'stock' as const, stockId: key },
  }));
}
const doneAt = () => new Date().toISOString();

async function picked(desk: Desk): Promise<void> {
  const technician = await desk.as(TECHNICIAN);
  for (const { at, thing, wanted: quantity } of await lines(desk))
    await technician.done('POST /api/v1/cases/{id}/kit/picks', {
      path: KIT,
      body: {
        entries: [
          {
            entry: { kind: 'pick', id: `pick_r-${at}`, thing, quantity, how: 'touch', doneAt: doneAt() },
            session: technician.mark,
          },
        ],
      },
    });
}

async function checked(desk: Desk): Promise<void> {
  const checker = await desk.as(CHECKER);
  const checkId = 'check_r-1';
  await checker.done('POST /api/v1/cases/{id}/kit/check', { path: KIT, body: { checkId } });
  const entryIds: string[] = [];
  for (const { at, thing, wanted: quantity } of await lines(desk)) {
    const id = `entry_r-${at}`;
    entryIds.push(id);
    const act = { kind: 'seen' as const, thing, quantity };
    await checker.done('POST /api/v1/kit-checks/{id}/entries', {
      path: { id: checkId },
      body: { entries: [{ entry: { id, act, doneAt: doneAt() }, session: checker.mark }] },
    });
  }
  const path = { id: checkId };
  await checker.done('POST /api/v1/kit-checks/{id}/close', { path, body: { entryIds, proof } });
}

/** The first case with a way out that somebody takes by one press. */
async function waysOut(desk: Desk) {
  const manager = await desk.as(MANAGER);
  const { cases } = await manager.done('GET /api/v1/reports/at-risk');
  for (const { case: one } of cases) {
    const path = { id: one.id };
    const answered = await manager.done('GET /api/v1/cases/{id}/ways-out', { path });
    const way = answered.waysOut.find(({ confirm }) => confirm !== null);
    if (way) return { path, body: { key: way.key }, revision: answered.revision };
  }
  throw new Error('no case at risk has a way out');
}

const session = async (desk: Desk, nth: number) => {
  const manager = await desk.as(MANAGER);
  const { items } = await manager.done('GET /api/v1/theatre-list/sessions', { query: { limit: 200 } });
  const one = items.at(-1 - nth);
  if (!one) throw new Error('the demo has no session');
  return one;
};

export const CASES: Rows = {
  'POST /api/v1/cases/{id}/ways-out': async (desk) => ({
    ...(await waysOut(desk)),
    by: MANAGER,
    act: 'promiseSets',
  }),
  'POST /api/v1/cases/{id}/cancel': onCase('case_lm-26-s8hu', { because: 'The patient has gone home.' }),
  'POST /api/v1/cases/{id}/put-back': onCase('case_lm-26-s8hu', {}),
  'POST /api/v1/cases/{id}/urgency': onCase('case_lm-26-u9dx', { urgency: 'soon' }),
  'POST /api/v1/cases/{id}/move': onCase('case_lm-26-z5wm', {
    ...{ date: '2026-01-21', time: '09:00', minutes: 60, theatreId: 'theatre_2' },
  }),
  'POST /api/v1/cases/{id}/promise': onCase('case_lm-26-u9dx', { setId: 'set_gen-04' }),
  'POST /api/v1/cases/{id}/free': onCase('case_lm-26-u9dx', { setId: 'set_gen-04' }),
  'POST /api/v1/cases/{id}/kit/list': (desk) => onKit(desk),
  'POST /api/v1/cases/{id}/kit/finish': async (desk) => {
    await picked(desk);
    return onKit(desk, { note: null });
  },
  'POST /api/v1/cases/{id}/kit/issue': async (desk) => {
    await checked(desk);
    return onKit(desk);
  },
  'POST /api/v1/cases/{id}/kit/take': (desk) => onKit(desk),
  'POST /api/v1/theatre-list/sessions/{id}': async (desk) => {
    const { id, date, revision } = await session(desk, 0);
    const body = { date, from: '08:30', until: '17:00', surgeonId: null };
    return { by: MANAGER, path: { id }, body, revision };
  },
  'POST /api/v1/theatre-list/sessions/{id}/remove': async (desk) => {
    const { id, revision } = await session(desk, 1);
    return { by: MANAGER, path: { id }, body: { andLater: false }, revision };
  },
  'POST /api/v1/theatre-list/theatres/{id}/lead': async (desk) => {
    const id = 'theatre_1';
    const revision = await seen(desk, 'GET /api/v1/theatre-list/theatres/{id}', { id });
    const body = { leadMinutes: 75, because: 'The lift is slow in the mornings.' };
    return { by: MANAGER, path: { id }, body, revision };
  },
  'PUT /api/v1/plans/{id}': async (desk) => {
    const { plan, surgeonId } = await draftOf(desk, 'case_lm-26-p3ka');
    const path = { id: plan.id };
    return {
      by: surgeonId,
      path,
      body: { construct: { ...plan.construct, note: 'Seen again.' } },
      revision: plan.revision,
    };
  },
  'POST /api/v1/plans/{id}/confirm': async (desk) => {
    const { plan, surgeonId } = await draftOf(desk, 'case_lm-26-p3ka');
    return { by: surgeonId, path: { id: plan.id }, body: {}, revision: plan.revision };
  },
  'DELETE /api/v1/plans/{id}': async (desk) => {
    const { plan, surgeonId } = await draftOf(desk, 'case_lm-26-g7vb');
    return { by: surgeonId, path: { id: plan.id }, body: {}, revision: plan.revision };
  },
};

async function draftOf(desk: Desk, id: string) {
  const manager = await desk.as(MANAGER);
  const { surgeonId } = await manager.done('GET /api/v1/cases/{id}', { path: { id } });
  const { items } = await manager.done('GET /api/v1/cases/{id}/plans', { path: { id } });
  const plan = first(
    items.flatMap((found) => (found.status === 'draft' ? [found] : [])),
    'draft',
  );
  return { plan, surgeonId: surgeonId as DemoPerson };
}
