import { and, eq } from 'drizzle-orm';
import type { SentPick } from '@/lib/caseLife/act';
import { matchPicks } from '@/lib/caseLife/match';
import { packProblems } from '@/lib/caseLife/packProblems';
import { setPickProblems } from '@/lib/caseLife/setProblems';
import { type NewId, stockId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { pickWords as words } from '@/lib/wording/case-life';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { packFactsOf, setPickFactsOf } from '../../queries/caseLife/pickFacts';
import { type KitOnRecord, meetingLines } from '../../queries/caseLife/standing';
import type { OnRecord } from '../../queries/caseLife/thing';
import type { Person } from '../../queries/people';
import { casePicks, setPromises } from '../../schema';
import { keepPromise, type RoundTimes, rivalFor, timesFor } from '../theatre/promises';
import { takeStep } from '../turns/take-step';
import { takeOffShelf } from './off-shelf';

export interface RecordedPick {
  id: string;
  enteredAt: string;
}

type Sent = Extract<SentPick, { kind: 'pick' }>;
interface Picking<K extends 'set' | 'pack'> {
  now: string;
  newId: NewId;
  round: RoundTimes;
  person: Person;
  sessionId: string | null;
  kit: KitOnRecord;
  sent: Sent;
  thing: Extract<OnRecord, { kind: K }>;
  /** The kit is in theatre, and asks for more: it leaves the store at once, and no list has it. */
  late: boolean;
}

/**
 * Puts a set to a kit, inside the caller's transaction: judged as it is now, on the list, and from here on promised to the
 * case.
 */
export async function pickSet(
  write: Queries,
  picking: Picking<'set'>,
): Promise<Outcome<RecordedPick, never>> {
  const { kit, sent, thing, round, person, now, newId } = picking;
  const { booked } = kit;
  const { set } = thing;
  const [kept] = await write
    .select()
    .from(setPromises)
    .where(and(eq(setPromises.setId, set.id), eq(setPromises.caseId, booked.id)));
  const times = await timesFor(write, booked, set.id, round);
  const rival = kept ? null : await rivalFor(write, set.id, times, booked.id);
  const facts = await setPickFactsOf(write, { set, booked, rival, packId: thing.packId, now });
  const problems = [...setPickProblems(facts), ...(picking.late ? [] : listProblems(kit, sent, thing))];
  if (problems.length > 0) return notPicked(problems);
  // what lies with a kit is somebody's choice: planning anew leaves it
  if (kept && kept.chosenBy === 'planning')
    await write
      .update(setPromises)
      .set({ chosenBy: 'person', promisedBy: person.id })
      .where(eq(setPromises.id, kept.id));
  let promiseId: string | null = null;
  if (!kept) {
    const make: NewId = (prefix) => {
      const id = newId(prefix);
      promiseId = id;
      return id;
    };
    await keepPromise(write, {
      setId: set.id,
      caseId: booked.id,
      times,
      chosenBy: 'person',
      personId: person.id,
      now,
      newId: make,
    });
  }
  const done = await keep(write, picking, {
    setId: set.id,
    packId: set.packId,
    useBy: set.useBy,
    quantity: 1,
    placeId: set.placeId,
    promiseId,
  });
  if (picking.late) await sendNow(write, picking);
  return done;
}

/** Puts single packs of one heap to a kit, inside the caller's transaction: judged as they are now, and on the list. */
export async function pickPack(
  write: Queries,
  picking: Picking<'pack'>,
): Promise<Outcome<RecordedPick, never>> {
  const { kit, sent, thing, now } = picking;
  const facts = await packFactsOf(write, { ...thing, kit, quantity: sent.quantity, now });
  const problems = [...packProblems(facts), ...(picking.late ? [] : listProblems(kit, sent, thing))];
  if (problems.length > 0) return notPicked(problems);
  const done = await keep(write, picking, {
    stockId: thing.heap.id,
    itemId: thing.item.id,
    packId: thing.pouch?.id ?? null,
    lot: thing.heap.lot,
    useBy: facts.useBy,
    quantity: sent.quantity,
    placeId: thing.heap.placeId,
  });
  if (picking.late)
    await takeOffShelf(write, {
      pick: {
        id: sent.id,
        caseId: kit.booked.id,
        stockId: thing.heap.id,
        packId: thing.pouch?.id ?? null,
        quantity: sent.quantity,
      },
      personId: picking.person.id,
      now,
    });
  return done;
}

/** A set that theatre asked for goes there as it is picked. */
async function sendNow(
  write: Queries,
  { kit, sent, thing, person, now, newId }: Picking<'set'>,
): Promise<void> {
  const { set } = thing;
  const taken = await takeStep(write, {
    set,
    to: 'inTheatre',
    action: 'send-to-theatre',
    person,
    now,
    newId,
    change: { caseId: kit.booked.id },
    detail: { caseId: kit.booked.id, packId: set.packId, pickId: sent.id },
  });
  if (!taken.ok) throw new Error(taken.refusal.problems[0]?.message ?? 'the step is open');
}

const notPicked = (problems: Problem[]): Outcome<never, never> => ({
  ok: false,
  refusal: { because: 'frozen', problems, current: null },
});

/** Whether the list asks for it, and still does. */
function listProblems(
  kit: KitOnRecord,
  sent: Sent,
  thing: Extract<OnRecord, { kind: 'set' | 'pack' }>,
): Problem[] {
  const picked = meetingLines(kit);
  const one =
    thing.kind === 'set'
      ? { id: sent.id, setId: thing.set.id, stockId: null, itemId: null, quantity: 1 }
      : {
          id: sent.id,
          setId: null,
          stockId: stockId.parse(thing.heap.id),
          itemId: thing.item.id,
          quantity: sent.quantity,
        };
  const before = matchPicks(kit.list, picked);
  const after = matchPicks(kit.list, [...picked, one]);
  const spare = (of: typeof after) => of.surplus.reduce((sum, { quantity }) => sum + quantity, 0);
  if (spare(after) === spare(before)) return [];
  const { reference } = kit.booked;
  const called = thing.kind === 'set' ? thing.set.code : thing.item.name;
  const asked = kit.list.some((line) =>
    thing.kind === 'set'
      ? line.kind === 'set' &&
        (line.setId === thing.set.id || line.alike.some(({ setId }) => setId === thing.set.id))
      : line.kind === 'pack' && line.itemId === thing.item.id,
  );
  if (asked) return [{ path: [], code: 'enough', message: words.enough(called, reference) }];
  return [
    { path: [], code: 'not-on-list', message: words.notOnList(called, reference, nextOfKind(before, thing)) },
  ];
}

/** The set the list asks for first that is not there yet, where the wrong thing is a set: what was probably reached for. */
function nextOfKind(
  { lines }: ReturnType<typeof matchPicks>,
  thing: Extract<OnRecord, { kind: 'set' | 'pack' }>,
): string | null {
  if (thing.kind !== 'set') return null;
  const next = lines.find(({ line, picked }) => line.kind === 'set' && picked === 0)?.line;
  return next?.kind === 'set' ? next.code : null;
}

type Kept = Pick<typeof casePicks.$inferInsert, 'quantity' | 'placeId'> &
  Partial<typeof casePicks.$inferInsert>;

async function keep(
  write: Queries,
  { kit, sent, person, sessionId, now, late }: Picking<'set'> | Picking<'pack'>,
  what: Kept,
): Promise<Outcome<RecordedPick, never>> {
  await write.insert(casePicks).values({
    ...what,
    id: sent.id,
    caseId: kit.booked.id,
    how: sent.how,
    scanId: sent.scanId ?? null,
    pickedBy: person.id,
    sessionId,
    doneAt: sent.doneAt,
    enteredAt: now,
    ...(late ? { issuedBy: person.id, issuedAt: now } : {}),
  });
  await appendLedger(write, {
    doneAt: sent.doneAt,
    enteredAt: now,
    personId: person.id,
    action: 'pick-for-case',
    subjectKind: 'case',
    subjectId: kit.booked.id,
    detail: { pickId: sent.id, how: sent.how, ...(late ? { late } : {}), ...what },
  });
  return { ok: true, value: { id: sent.id, enteredAt: now } };
}
