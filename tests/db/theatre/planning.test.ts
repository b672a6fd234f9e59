import { eq } from 'drizzle-orm';
import { beforeEach, expect, it } from 'vitest';
import { highsSolver } from '@/app/_server/solver/highs';
import type { Database } from '@/db/client';
import { keepPlan } from '@/db/operations/theatre/keep-plan';
import { moveCase } from '@/db/operations/theatre/move-case';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { listPeople, type Person } from '@/db/queries/people';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import { cases, ledger, setPromises } from '@/db/schema';
import { setTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import { setTurnaround } from '@/lib/calculations/setTurnaround/setTurnaround';
import { caseId, type NewId } from '@/lib/identity/ids';
import { proposedChanges } from '@/lib/theatre/planning/proposedChanges';
import { setsByCase } from '@/lib/theatre/planning/setsByCase';
import { turnaroundInput } from '@/lib/theatre/planning/turnaroundInput';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

const NOW = DEMO_NOW.toISOString();
const round: RoundTimes = { leadMinutes: 60, roundMinutes: () => 345 };
let db: Database;
let manager: Person;
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_test-${made}`;
};

beforeEach(async () => {
  db = await demoDatabase();
  manager = (await listPeople(db)).find(({ role }) => role === 'theatreManager') as Person;
});

async function plan() {
  const facts = await planningFacts(db, NOW);
  const input = setTurnaroundInput.parse({ ...turnaroundInput(facts), repairsFor: [] });
  const said = await setTurnaround(input, { solver: highsSolver });
  const answer = said.outcome === 'answered' ? said.answer : said.known;
  return { facts, byCase: setsByCase(facts, answer) };
}
async function keep({ facts, byCase }: Awaited<ReturnType<typeof plan>>) {
  const madeFrom = new Set(facts.promises.map(({ id }) => id));
  return keepPlan({ db, now: NOW, newId, person: manager, plan: byCase, madeFrom, round });
}
const promises = () => db.read.select().from(setPromises).orderBy(setPromises.caseId, setPromises.setId);

it('gives sets to the demo’s cases, keeps what people chose, and changes nothing when asked again', async () => {
  const chosen = await promises();
  const first = await plan();
  expect(first.byCase.size).toBeGreaterThan(10);
  expect([...first.byCase.values()].filter((sets) => sets.length > 0).length).toBeGreaterThan(8);
  expect(await keep(first)).toMatchObject({ ok: true });
  const kept = await promises();
  expect(kept.length).toBeGreaterThan(chosen.length);
  expect(kept).toEqual(expect.arrayContaining(chosen));
  expect(await keep(await plan())).toEqual({ ok: true, value: { given: [], taken: [] } });
});

it('is refused where promises changed since, and moves nothing that need not move', async () => {
  const first = await plan();
  await keep(first);
  expect(await keep(first)).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
  const before = await promises();
  const [one] = await db.read
    .select()
    .from(cases)
    .where(eq(cases.id, before.find(({ chosenBy }) => chosenBy === 'planning')?.caseId ?? ''));
  if (!one) throw new Error('planning gave nothing');
  const later = (at: string) => new Date(Date.parse(at) + 3 * 86_400_000).toISOString();
  await moveCase({
    db,
    now: NOW,
    newId,
    person: manager,
    caseId: caseId.parse(one.id),
    baseRevision: one.revision,
    theatreId: 'theatre_4',
    startsAt: later(one.startsAt),
    endsAt: later(one.endsAt),
    round,
  });
  await keep(await plan());
  const after = await promises();
  const others = before.filter(({ caseId: id }) => id !== one.id);
  const stayed = others.filter(({ caseId: id, setId }) =>
    after.some((promise) => promise.caseId === id && promise.setId === setId),
  );
  expect(stayed.length).toBe(others.length);
  const entries = await db.read.select().from(ledger).where(eq(ledger.action, 'plan-sets'));
  expect(entries.length).toBeGreaterThan(0);
});

it('that somebody looked at is refused once a case of it is at another time, and gives no set then', async () => {
  const looked = await plan();
  const seenAt = new Map(looked.facts.cases.map(({ id, startsAt, endsAt }) => [id, { startsAt, endsAt }]));
  const before = await promises();
  // one that nothing is promised to: moving it changes no promise
  const free = looked.facts.cases.find(
    ({ id, startsAt }) => startsAt > NOW && !before.some((promise) => promise.caseId === id),
  );
  if (!free) throw new Error('everything is promised');
  const [row] = await db.read.select().from(cases).where(eq(cases.id, free.id));
  const later = (at: string) => new Date(Date.parse(at) + 3 * 86_400_000).toISOString();
  const moved = await moveCase({
    db,
    now: NOW,
    newId,
    person: manager,
    caseId: free.id,
    baseRevision: row?.revision ?? 0,
    theatreId: 'theatre_4',
    startsAt: later(free.startsAt).replace(/T.*/, 'T20:00:00.000Z'),
    endsAt: later(free.startsAt).replace(/T.*/, 'T21:00:00.000Z'),
    round,
  });
  expect(moved).toMatchObject({ ok: true });
  const madeFrom = new Set(looked.facts.promises.map(({ id }) => id));
  const asked = { db, now: NOW, newId, person: manager, plan: looked.byCase, madeFrom, round };
  expect(await keepPlan({ ...asked, seenAt })).toMatchObject({ refusal: { because: 'conflict' } });
  expect(await promises()).toEqual(before);
  // the plan as it is made now says what it would change, and keeping it changes just that
  const anew = await plan();
  const changes = proposedChanges(anew.facts, anew.byCase);
  expect(changes.length).toBeGreaterThan(0);
  const kept = await keep(anew);
  if (!kept.ok) throw new Error('it was not kept');
  expect(new Set(changes.filter(({ gets }) => gets.length > 0).map(({ caseId: id }) => id))).toEqual(
    new Set(kept.value.given.map(({ caseId: id }) => id)),
  );
  expect(changes.flatMap(({ gets }) => gets)).toHaveLength(kept.value.given.length);
  expect(changes.flatMap(({ loses }) => loses)).toHaveLength(kept.value.taken.length);
});
