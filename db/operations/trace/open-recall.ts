import { and, desc, eq, inArray, isNull, sql } from 'drizzle-orm';
import type { NewId, RecallId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import { textProblems } from '@/lib/plans/checkConstruct';
import type { RecallOf, RecallReach, RecallTask } from '@/lib/trace/recall';
import { recallWords as words } from '@/lib/wording/recall';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { recallReach } from '../../queries/trace/reach';
import { recallNames } from '../../queries/trace/recallNames';
import { cases, people, recallHolds, recalls, recallTasks, sets, stock } from '../../schema';
import { holdInside } from '../turns/hold-set';
import { tellPerson } from '../turns/tell-person';

interface OpenRecall {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** Made where it was asked for: the same sent twice is opened once. */
  recallId: RecallId;
  of: RecallOf;
  reason: string;
  noticeReference: string;
  isRehearsal: boolean;
  /** Sets with pieces whose lot nobody knows are held too. */
  holdUnknown: boolean;
}

interface RecallOpened {
  id: string;
  number: string;
  heldSets: number;
  heldHeaps: number;
}

const MOST_REASON = 300;
const MOST_REFERENCE = 80;

/**
 * Calls something back, in one write: what it reaches is worked out and kept, sets and heaps are held at once, and those who
 * must know are told and asked. A rehearsal does the same and holds nothing. Lifting those holds, and closing, are people's.
 */
export async function openRecall(request: OpenRecall): Promise<Outcome<RecallOpened, never>> {
  const { db, now, person, recallId, of, isRehearsal } = request;
  if (!may(person, 'openRecall')) return refused('notPermitted', words.mayNot('open a recall'));
  const reason = request.reason.trim();
  const noticeReference = request.noticeReference.trim();
  const problems = problemsOf(reason, noticeReference);
  if (problems.length > 0) return refusedFor(problems);
  return db.tx(async (write) => {
    const [sent] = await write.select().from(recalls).where(eq(recalls.id, recallId));
    if (sent)
      return { ok: true, value: { id: sent.id, number: sent.number, ...(await heldBy(write, sent.id)) } };
    if (!isRehearsal) {
      const open = await openOf(write, of);
      if (open !== null) return refused('frozen', words.openAlready(open));
    }
    const reach = await recallReach(write, of);
    if (!reach) return refused('notFound', words.nothingCalled);
    const number = await nextNumber(write);
    await write.insert(recalls).values({
      id: recallId,
      number,
      kind: of.kind,
      itemId: 'itemId' in of ? of.itemId : null,
      lot: of.kind === 'lot' ? of.lot : null,
      setId: of.kind === 'set' ? of.setId : null,
      loadId: of.kind === 'load' ? of.loadId : null,
      reason,
      noticeReference: noticeReference || null,
      isRehearsal,
      found: reach,
      openedBy: person.id,
      openedAt: now,
      revision: 1,
    });
    if (!isRehearsal) await holdAll(write, request, reach, words.holdNote(number, reason));
    const held = await heldBy(write, recallId);
    await askPeople(write, request, reach, number);
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'open-recall',
      subjectKind: 'recall',
      subjectId: recallId,
      detail: {
        number,
        of,
        reason,
        noticeReference: noticeReference || null,
        rehearsal: isRehearsal,
        cases: reach.cases.map(({ caseId, lo, hi }) => ({ caseId, lo, hi })),
        sets: isRehearsal ? [] : reach.sets.map(({ setId }) => setId),
        heaps: isRehearsal ? [] : reach.heaps.map(({ stockId }) => stockId),
        ...held,
      },
    });
    return { ok: true, value: { id: recallId, number, ...held } };
  });
}

function problemsOf(reason: string, reference: string): Problem[] {
  const problems: Problem[] = [];
  if (reason === '') problems.push({ path: ['reason'], code: 'needed', message: words.reasonNeeded });
  if (reason.length > MOST_REASON)
    problems.push({ path: ['reason'], code: 'too-long', message: words.tooLong(MOST_REASON) });
  if (reference.length > MOST_REFERENCE)
    problems.push({ path: ['noticeReference'], code: 'too-long', message: words.tooLong(MOST_REFERENCE) });
  return [...problems, ...textProblems(reason, ['reason']), ...textProblems(reference, ['noticeReference'])];
}

/** The number of a recall that is open for the very same thing. */
async function openOf(write: Queries, of: RecallOf): Promise<string | null> {
  const open = await write
    .select()
    .from(recalls)
    .where(and(isNull(recalls.closedAt), eq(recalls.kind, of.kind), eq(recalls.isRehearsal, false)));
  const same = open.find(
    (one) =>
      one.itemId === ('itemId' in of ? of.itemId : null) &&
      one.lot === (of.kind === 'lot' ? of.lot : null) &&
      one.setId === (of.kind === 'set' ? of.setId : null) &&
      one.loadId === (of.kind === 'load' ? of.loadId : null),
  );
  return same?.number ?? null;
}

/** Numbers only grow: a recall is never deleted. */
async function nextNumber(write: Queries): Promise<string> {
  const [last] = await write
    .select({ number: recalls.number })
    .from(recalls)
    .orderBy(desc(recalls.number))
    .limit(1);
  return `R-${String(Number(last?.number.slice(2) ?? 0) + 1).padStart(5, '0')}`;
}

async function holdAll(write: Queries, request: OpenRecall, reach: RecallReach, note: string): Promise<void> {
  const { person, now, newId, recallId, holdUnknown } = request;
  const reached = new Map(reach.sets.map(({ setId, pieces }) => [setId, pieces]));
  if (holdUnknown) for (const setId of reach.unknownLots) if (!reached.has(setId)) reached.set(setId, 1);
  for (const [setId, pieces] of reached) {
    const [set] = await write.select().from(sets).where(eq(sets.id, setId));
    if (!set) throw new Error(`there is no set ${setId}`);
    const held = await holdInside(write, {
      set,
      because: 'recall',
      note,
      action: 'hold-set',
      person,
      now,
      newId,
      detail: { recallId },
    });
    if (!held.ok) throw new Error(held.refusal.problems[0]?.message ?? 'a set can be held at any step');
    await write.insert(recallHolds).values({ recallId, setId, stockId: null, pieces, heldAt: now });
  }
  for (const { stockId, pieces } of reach.heaps) {
    // what is held for another reason stays held for it, and is counted here all the same
    await write
      .update(stock)
      .set({ heldBecause: 'recall', revision: sql`${stock.revision} + 1` })
      .where(and(eq(stock.id, stockId), isNull(stock.heldBecause)));
    await write.insert(recallHolds).values({ recallId, setId: null, stockId, pieces, heldAt: now });
  }
}

async function heldBy(write: Queries, recallId: string): Promise<{ heldSets: number; heldHeaps: number }> {
  const rows = await write.select().from(recallHolds).where(eq(recallHolds.recallId, recallId));
  const heldSets = rows.filter(({ setId }) => setId !== null).length;
  return { heldSets, heldHeaps: rows.length - heldSets };
}

const ASKED_BY_ROLE: readonly [Role, RecallTask, (reach: RecallReach) => boolean][] = [
  ['stockKeeper', 'takeOffShelf', ({ heaps }) => heaps.length > 0],
  ['decontaminationLead', 'keepSetsHeld', ({ sets: some }) => some.length > 0],
  ['incidentLead', 'know', () => true],
  ['theatreManager', 'know', () => true],
];

/** Those concerned: the surgeons of cases that had it or may have, and who keeps shelf, sets, theatre and incidents. */
async function askPeople(
  write: Queries,
  request: OpenRecall,
  reach: RecallReach,
  number: string,
): Promise<void> {
  const { person, now, newId, recallId, of, isRehearsal } = request;
  const asked = new Map<string, Set<RecallTask>>();
  const ask = (personId: string, task: RecallTask) =>
    asked.set(personId, (asked.get(personId) ?? new Set()).add(task));
  const reached = reach.cases.filter(({ hi }) => hi > 0).map(({ caseId }) => caseId);
  for (let at = 0; at < reached.length; at += 400) {
    const rows = await write
      .selectDistinct({ surgeonId: cases.surgeonId })
      .from(cases)
      .where(inArray(cases.id, reached.slice(at, at + 400)));
    for (const { surgeonId } of rows) ask(surgeonId, 'lookAtCases');
  }
  const staff = await write
    .select({ id: people.id, role: people.role })
    .from(people)
    .where(isNull(people.leftAt));
  for (const [role, task, concerns] of ASKED_BY_ROLE)
    if (concerns(reach)) for (const one of staff) if (one.role === role) ask(one.id, task);
  const { what } = await recallNames(write, of);
  for (const [personId, tasks] of asked) {
    for (const task of tasks)
      await write.insert(recallTasks).values({
        id: newId('task'),
        recallId,
        personId,
        task,
        // whoever opened it knows
        acknowledgedAt: personId === person.id ? now : null,
        note: null,
      });
    if (personId === person.id) continue;
    await tellPerson(write, {
      personId,
      kind: 'recallOpened',
      detail: { number, what, rehearsal: isRehearsal, tasks: [...tasks], by: person.name },
      href: `/recalls/${recallId}`,
      now,
      newId,
    });
  }
}
