import { eq } from 'drizzle-orm';
import { type SentPick, sentPick } from '@/lib/caseLife/act';
import { mayDo } from '@/lib/caseLife/life';
import { lineKey } from '@/lib/caseLife/list';
import { matchPicks } from '@/lib/caseLife/match';
import { packProblems } from '@/lib/caseLife/packProblems';
import { setPickProblems } from '@/lib/caseLife/setProblems';
import { type CaseId, type NewId, stockId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { pickWords as words } from '@/lib/wording/case-life';
import { sendWords } from '@/lib/wording/turns';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { packFactsOf, setPickFactsOf } from '../../queries/caseLife/pickFacts';
import { type KitOnRecord, kitOnRecord, meetingLines, stands } from '../../queries/caseLife/standing';
import { type OnRecord, thingOnRecord } from '../../queries/caseLife/thing';
import type { Person } from '../../queries/people';
import { casePicks, people, setPromises } from '../../schema';
import { keepPromise, type RoundTimes, rivalFor, timesFor } from '../theatre/promises';
import { takeStep } from '../turns/take-step';
import { planProblem } from './at-kit';
import { takeOffShelf } from './off-shelf';
import { putBack } from './put-back';

interface RecordPick {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  round: RoundTimes;
  /** Of the session it was done in, not of whoever is at the screen when it arrives. */
  person: Person;
  sessionId: string | null;
  caseId: CaseId;
  /** As sent from outside; parsed here. */
  pick: unknown;
}

export interface RecordedPick {
  id: string;
  enteredAt: string;
}

/**
 * Makes one pick durable, or one putting back. Sent again it is answered as it was the first time, whatever became of the
 * kit since. What may not go to the case is refused with every reason at once, and nothing is recorded of it.
 */
export async function recordPick(request: RecordPick): Promise<Outcome<RecordedPick, never>> {
  const { db, person, caseId } = request;
  const parsed = sentPick.safeParse(request.pick);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const sent = parsed.data;
  return db.tx(async (write) => {
    if (sent.kind === 'putBack') return putBack(write, { ...request, sent });
    const [before] = await write.select().from(casePicks).where(eq(casePicks.id, sent.id));
    if (before) {
      const same = before.caseId === caseId && before.pickedBy === person.id && before.doneAt === sent.doneAt;
      return same
        ? { ok: true, value: { id: sent.id, enteredAt: before.enteredAt } }
        : refused('conflict', words.idTaken);
    }
    if (!may(person.role, 'pickKit')) return refused('notPermitted', words.mayNot(person.name, 'pick kits'));
    const kit = await kitOnRecord(write, caseId);
    if (!kit) return refused('notFound', words.noSuchCase);
    const late = mayDo(kit.stage, 'fetch');
    if (!late && !mayDo(kit.stage, 'pick'))
      return refused('frozen', words.notNow(kit.booked.reference, kit.stage));
    if (late && !may(person.role, 'issueKit'))
      return refused('notPermitted', words.mayNot(person.name, 'issue what theatre asks for'));
    const changed = late ? null : await planProblem(write, kit);
    if (changed) return refused('frozen', changed);
    if (Date.parse(kit.booked.endsAt) < Date.parse(request.now))
      return refused('frozen', sendWords.caseOver(kit.booked.reference));
    const thing = await thingOnRecord(write, sent.thing, new Set(kit.list.map(lineKey)));
    if (thing.kind === 'unknown') return unknownThing(thing);
    const taken = await takenAlready(write, kit, thing, request.now);
    if (taken) return refused('frozen', taken);
    return thing.kind === 'set'
      ? pickSet(write, { ...request, kit, sent, thing, late })
      : pickPack(write, { ...request, kit, sent, thing, late });
  });
}

type Sent = Extract<SentPick, { kind: 'pick' }>;
type Picking<K extends 'set' | 'pack'> = RecordPick & {
  kit: KitOnRecord;
  sent: Sent;
  thing: Extract<OnRecord, { kind: K }>;
  /** The kit is in theatre, and asks for more: it leaves the store at once, and no list has it. */
  late: boolean;
};

function unknownThing(thing: Extract<OnRecord, { kind: 'unknown' }>): Outcome<never, never> {
  switch (thing.why) {
    case 'noSuchThing':
      return refused('notFound', words.noSuchThing);
    case 'notSterile':
      return refused('frozen', words.packNotSterile(thing.name));
    case 'lotUnknown':
      return refused('frozen', words.lotUnknown(thing.name, thing.lot));
    case 'lotNotSaid':
      return refused('frozen', words.lotNotSaid(thing.name));
  }
}

/** The set or labelled pouch lies with this very kit: two people reached for it, or one scanned it twice. */
async function takenAlready(
  write: Queries,
  { picks }: KitOnRecord,
  thing: Extract<OnRecord, { kind: 'set' | 'pack' }>,
  now: string,
): Promise<string | null> {
  const own = picks.find(
    (pick) =>
      stands(pick) &&
      (thing.kind === 'set'
        ? pick.setId === thing.set.id
        : thing.pouch !== null && pick.packId === thing.pouch.id),
  );
  if (!own) return null;
  const [by] = await write.select({ name: people.name }).from(people).where(eq(people.id, own.pickedBy));
  const called = thing.kind === 'set' ? thing.set.code : thing.item.name;
  return words.pickedAlready(called, by?.name ?? '', own.doneAt, now);
}

async function pickSet(write: Queries, picking: Picking<'set'>): Promise<Outcome<RecordedPick, never>> {
  const { kit, sent, thing, round, person, now, newId } = picking;
  const { booked } = kit;
  const { set } = thing;
  const [kept] = (await write.select().from(setPromises).where(eq(setPromises.setId, set.id))).filter(
    ({ caseId }) => caseId === booked.id,
  );
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

async function pickPack(write: Queries, picking: Picking<'pack'>): Promise<Outcome<RecordedPick, never>> {
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
  if (picking.late) await takeOffShelf(write, thing.heap.id, sent.quantity);
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
