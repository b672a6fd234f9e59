import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { AnswerOf } from '@/clients/typescript/client';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { DEMO_NOW } from '../setup/database';
import { apiServer } from './server';

beforeAll(() => {
  vi.useFakeTimers({ toFake: ['Date'], now: DEMO_NOW });
});
afterAll(() => {
  vi.useRealTimers();
});

type Line = AnswerOf<'GET /api/v1/cases/{id}/kit/list'>['lines'][number];

/** A minute passes: people are not all in the same moment. */
const later = () => {
  vi.setSystemTime(Date.now() + 60_000);
  return new Date().toISOString();
};

test('a case is booked, planned, fetched, checked, issued, used and returned through the API alone', async () => {
  const { asPerson } = await apiServer();
  const [surgeon, technician, second, scrub] = await Promise.all([
    asPerson('person_tobias-wray'),
    asPerson('person_wren-adeyemi'),
    asPerson('person_tomas-birkett'),
    asPerson('person_ruth-okonjo'),
  ]);

  // booked from a saved start, which gives it the first draft of its plan
  const { theatres } = await surgeon.done('GET /api/v1/cases/choices');
  const starts = [];
  for await (const start of surgeon.every('GET /api/v1/plans/starts', { query: { limit: 2 } }))
    starts.push(start);
  const start = starts.find(({ id }) => id === 'start_demo-4');
  if (!start) throw new Error('the demo has no start of an ankle');
  const booking = {
    theatreId: theatres[0]?.id ?? '',
    date: '2026-01-16',
    time: '19:00',
    minutes: 60,
    region: start.construct.region,
    limb: 'left' as const,
    surgeonId: start.owner.id,
    urgency: 'booked' as const,
    startId: start.id,
  };
  const path = { id: (await surgeon.done('POST /api/v1/cases', { body: booking, once: 'book-1' })).id };
  const again = await surgeon.call('POST /api/v1/cases', { body: booking, once: 'book-1' });
  expect(again).toMatchObject({ ok: true, replayed: true, value: { id: path.id } });

  // planned: what nobody confirmed is no kit
  const [draft] = (await surgeon.done('GET /api/v1/cases/{id}/plans', { path })).items;
  if (draft?.status !== 'draft') throw new Error('there is no draft');
  const plan = { path: { id: draft.id }, body: { revision: draft.revision } };
  expect(await technician.call('POST /api/v1/plans/{id}/confirm', plan)).toMatchObject({
    ok: false,
    status: 403,
    problem: { because: 'notPermitted' },
  });
  await surgeon.done('POST /api/v1/plans/{id}/confirm', plan);
  const kit = await technician.done('GET /api/v1/cases/{id}/kit', { path });
  expect(kit.kind).toBe('kit');

  // fetched, by the list everybody picks by
  const stateOf = () => technician.done('GET /api/v1/cases/{id}/kit/list', { path });
  const baseRevision = async () => (await stateOf()).revision;
  await technician.done('POST /api/v1/cases/{id}/kit/list', {
    path,
    body: { baseRevision: await baseRevision() },
  });
  const { lines } = await stateOf();
  expect(lines.length).toBeGreaterThan(0);
  for (const line of lines) {
    const doneAt = later();
    const entry = {
      kind: 'pick' as const,
      id: `pick_${named(line)}`,
      thing: thingOf(line),
      quantity: line.wanted,
    };
    const { delivered } = await technician.done('POST /api/v1/cases/{id}/kit/picks', {
      path,
      body: { entries: [{ entry: { ...entry, how: 'touch', doneAt }, session: technician.mark }] },
    });
    expect(delivered).toEqual([expect.objectContaining({ ok: true })]);
  }
  const finish = { path, body: { baseRevision: await baseRevision(), note: null } };
  await technician.done('POST /api/v1/cases/{id}/kit/finish', finish);
  // whoever saw an earlier state is told so, and changes nothing
  expect(
    await technician.call('POST /api/v1/cases/{id}/kit/issue', { path, body: { baseRevision: 1 } }),
  ).toMatchObject({
    ok: false,
    status: 409,
    problem: { because: 'conflict', current: { revision: expect.any(Number) } },
  });

  // checked, by somebody else, who is not shown what was picked
  const checkId = 'check_by-api';
  expect(
    await technician.call('POST /api/v1/cases/{id}/kit/check', { path, body: { checkId } }),
  ).toMatchObject({ ok: false });
  await second.done('POST /api/v1/cases/{id}/kit/check', { path, body: { checkId } });
  const entryIds: string[] = [];
  for (const line of lines) {
    const [id, doneAt] = [`entry_${named(line)}`, later()];
    const act = { kind: 'seen' as const, thing: thingOf(line), quantity: line.wanted };
    entryIds.push(id);
    await second.done('POST /api/v1/kit-checks/{id}/entries', {
      path: { id: checkId },
      body: { entries: [{ entry: { id, act, doneAt }, session: second.mark }] },
    });
  }
  const proof = { secret: DEMO_PASSWORD };
  await second.done('POST /api/v1/kit-checks/{id}/close', {
    path: { id: checkId },
    body: { entryIds, proof },
  });
  expect(await second.done('GET /api/v1/kit-checks/{id}', { path: { id: checkId } })).toMatchObject({
    case: { id: path.id },
    closedAt: expect.any(String),
  });

  // issued, taken over in theatre
  later();
  await technician.done('POST /api/v1/cases/{id}/kit/issue', {
    path,
    body: { baseRevision: await baseRevision() },
  });
  later();
  await scrub.done('POST /api/v1/cases/{id}/kit/take', {
    path,
    body: { baseRevision: await baseRevision() },
  });
  expect((await stateOf()).stage).toBe('inTheatre');

  // used: an implant of the set stays with the patient
  const table = await scrub.done('GET /api/v1/cases/{id}/use', { path });
  const slot = table.slots.find(({ reusable, recorded }) => !reusable && (recorded ?? 0) > 0);
  if (!slot) throw new Error('there is nothing to implant at the table');
  const piece = {
    kind: 'piece' as const,
    source: { kind: 'slot' as const, setId: slot.setId, lineId: slot.lineId },
    itemId: slot.itemId,
    quantity: 1,
    outcome: 'implanted' as const,
    ...{
      lostAt: null,
      place: null,
      lot: { kind: 'setAndLoad' as const },
      despite: [],
      note: null,
      because: null,
    },
  };
  const used = await scrub.done('POST /api/v1/cases/{id}/use/entries', {
    path,
    body: {
      entries: [
        { entry: { id: 'entry_used-1', act: piece, scanId: null, doneAt: later() }, session: scrub.mark },
      ],
    },
  });
  expect(used.delivered).toEqual([expect.objectContaining({ ok: true })]);

  // returned, and accounted for
  const { things } = await technician.done('GET /api/v1/cases/{id}/kit/returns', { path });
  for (const { pickId, stillOut } of things)
    await technician.done('POST /api/v1/cases/{id}/kit/returns', {
      path,
      body: {
        returned: {
          id: `return_${named({ key: pickId })}`,
          pickId,
          outcome: 'cameBack',
          quantity: stillOut,
          note: null,
        },
      },
    });
  const back = await technician.done('GET /api/v1/cases/{id}/kit/returns', { path });
  expect(back.things.map(({ stillOut }) => stillOut)).toEqual(things.map(() => 0));
  const setPath = { path: { id: slot.setId } };
  expect((await technician.done('GET /api/v1/sets/{id}', setPath)).step).toBe('comingBack');
  expect((await surgeon.done('GET /api/v1/cases/{id}/use', { path })).entries).toEqual([
    expect.objectContaining({ id: 'entry_used-1', act: piece, by: 'Ruth Okonjo' }),
  ]);
});

const named = ({ key }: Pick<Line, 'key'>) => key.replace(/^\w+_/, '');
/** What of the hospital a line of the list names, as it is pointed at. */
const thingOf = ({ kind, key }: Line) =>
  kind === 'set'
    ? { kind: 'set' as const, setId: key, packId: null }
    : { kind: 'stock' as const, stockId: key };

test('with a token, what changed meanwhile is told as 412 with the revision it has now', async () => {
  const { token, byToken } = await apiServer();
  const manager = byToken(await token('person_gwen-sallis', ['managePlaces', 'keepProcedures']));
  const keeper = byToken(await token('person_wren-adeyemi', ['pickKit']));
  const seen = async (answered: Promise<{ ok: boolean; status: number; etag: string | null }>) => {
    const { ok, status, etag } = await answered;
    return { ok, status, etag };
  };

  const [place] = (await manager.done('GET /api/v1/places', { query: { limit: 1 } })).items;
  if (!place) throw new Error('the demo has no place');
  const at = { path: { id: place.id } };
  const { etag } = await manager.call('GET /api/v1/places/{id}', at);
  expect(etag).toBe(`"${place.revision}"`);
  const body = { name: `${place.name} here`, metres: place.metres, inUse: true };
  await manager.done('PUT /api/v1/places/{id}', { ...at, body, ifMatch: etag ?? '' });
  const now = { ok: false, status: 412, etag: `"${place.revision + 1}"` };
  expect(await seen(manager.call('PUT /api/v1/places/{id}', { ...at, body, ifMatch: etag ?? '' }))).toEqual(
    now,
  );
  // and with what it is told it goes through
  expect(
    await seen(manager.call('PUT /api/v1/places/{id}', { ...at, body, ifMatch: now.etag })),
  ).toMatchObject({
    ok: true,
  });

  const [procedure] = (await manager.done('GET /api/v1/plans/procedures')).items;
  if (!procedure) throw new Error('the demo has no procedure');
  const { name, region, inUse, revision } = procedure;
  expect(
    await seen(
      manager.call('PUT /api/v1/plans/procedures/{id}', {
        path: { id: procedure.id },
        body: { name, region, inUse },
        ifMatch: `"${revision + 7}"`,
      }),
    ),
  ).toEqual({ ok: false, status: 412, etag: `"${revision}"` });

  const cases = (await manager.done('GET /api/v1/cases', { query: { from: '2026-01-01' } })).items;
  const planned = cases.find(({ plan }) => plan.confirmedVersion !== null);
  const kit = { path: { id: planned?.id ?? '' } };
  const list = await keeper.call('GET /api/v1/cases/{id}/kit/list', kit);
  expect(
    await seen(keeper.call('POST /api/v1/cases/{id}/kit/list', { ...kit, body: {}, ifMatch: '"99"' })),
  ).toEqual({ ok: false, status: 412, etag: list.etag });
});
