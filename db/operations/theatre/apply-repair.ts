import { and, eq, inArray } from 'drizzle-orm';
import type { CaseId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { pickWords } from '@/lib/wording/case-life';
import { theatreListWords } from '@/lib/wording/theatre-list';
import { wayOutWords as words } from '@/lib/wording/ways-out';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { setsOnKits } from '../../queries/caseLife/standing';
import { cases, setPromises, sets, theatres } from '../../schema';
import { tellPerson } from '../turns/tell-person';
import { atCase, type CaseNow, type CaseRequest, type CaseRow } from './at-case';
import { moveInside } from './move-inside';
import {
  keepPromise,
  type PromiseRow,
  type RoundTimes,
  rivalFor,
  theatreTakenBy,
  timesFor,
} from './promises';
import { type RepairBasis, standsAsSeen } from './repair-basis';

interface ApplyRepair extends CaseRequest {
  /** Which repair, for the ledger. */
  kind: 'otherSets' | 'changeOrder' | 'laterSlot';
  /** The sets of every case whose promises change, afterwards; the case's own are among them. */
  gives: readonly { caseId: CaseId; setIds: readonly SetId[] }[];
  /** Cases that begin at another time, in their own theatres. */
  moves: readonly { caseId: CaseId; startsAt: string; endsAt: string }[];
  madeFrom: RepairBasis;
  round: RoundTimes;
}

export interface RepairApplied {
  given: { caseId: string; setId: string }[];
  taken: { caseId: string; setId: string }[];
  moved: string[];
}

/**
 * Takes one way out for a case at risk, all of it or nothing: promises its sets to it, moves the promises of others that the
 * person saw would move, and puts cases at other times. Refused where anything it rests on changed since it was worked out.
 * What is promised to the case is from then on a person's choice. The surgeons whose cases lose or change sets are told.
 */
export async function applyRepair(request: ApplyRepair): Promise<Outcome<RepairApplied, CaseNow>> {
  const { moves, gives } = request;
  try {
    return await atCase(request, moves.length > 0 ? 'keepTheatreList' : 'promiseSets', async (write, row) => {
      if (row.cancelledAt !== null) return refused('frozen', theatreListWords.cancelled(row.reference));
      if (row.endsAt <= request.now) return refused('frozen', theatreListWords.over(row.reference));
      const caseIds = [
        ...new Set([row.id, ...gives.map((one) => one.caseId), ...moves.map((one) => one.caseId)]),
      ];
      const setIds = [...new Set(gives.flatMap((one) => one.setIds))];
      if (!(await standsAsSeen(write, request.madeFrom, { cases: caseIds, sets: setIds })))
        return refused('conflict', words.overtaken);
      return { ok: true as const, value: await applyInside(write, request, caseIds) };
    });
  } catch (error) {
    if (error instanceof TakenBack) return error.answer;
    throw error;
  }
}

async function applyInside(write: Queries, request: ApplyRepair, caseIds: string[]): Promise<RepairApplied> {
  const { gives, moves } = request;
  const rows = await write.select().from(cases).where(inArray(cases.id, caseIds));
  const kept = await write
    .select()
    .from(setPromises)
    .where(
      inArray(
        setPromises.caseId,
        gives.map(({ caseId }) => caseId),
      ),
    );
  const wanted = new Map<string, ReadonlySet<string>>(
    gives.map(({ caseId, setIds }) => [caseId, new Set(setIds)]),
  );
  const ended = kept.filter(({ caseId, setId }) => !wanted.get(caseId)?.has(setId));
  mayTake(request, ended);
  await noneLiesWithAKit(write, ended);
  if (ended.length > 0)
    await write.delete(setPromises).where(
      inArray(
        setPromises.id,
        ended.map(({ id }) => id),
      ),
    );
  await moveAll(write, request, rows);
  const has = new Set(kept.map(({ caseId, setId }) => `${caseId} ${setId}`));
  const byPerson = new Set(ended.flatMap(({ caseId, chosenBy }) => (chosenBy === 'person' ? [caseId] : [])));
  const given: RepairApplied['given'] = [];
  for (const { caseId, setIds } of gives)
    for (const setId of setIds) {
      if (has.has(`${caseId} ${setId}`)) continue;
      const chosenBy = caseId === request.caseId || byPerson.has(caseId) ? 'person' : 'planning';
      await give(write, request, { caseId, setId, chosenBy });
      given.push({ caseId, setId });
    }
  const applied = {
    given,
    taken: ended.map(({ caseId, setId }) => ({ caseId, setId })),
    moved: moves.map(({ caseId }) => caseId),
  };
  // what stays promised to the case it was done for is a person's choice from now on
  await write
    .update(setPromises)
    .set({ chosenBy: 'person', promisedBy: request.person.id, promisedAt: request.now })
    .where(and(eq(setPromises.caseId, request.caseId), eq(setPromises.chosenBy, 'planning')));
  await record(write, request, rows, applied);
  return applied;
}

/** What somebody promised to another case is taken by those alone who may promise. */
function mayTake({ person, caseId }: ApplyRepair, ended: readonly PromiseRow[]): void {
  const taken = ended.some((promise) => promise.caseId !== caseId && promise.chosenBy === 'person');
  if (taken && !may(person, 'promiseSets'))
    throw new TakenBack(refused('notPermitted', words.mayNotTakeFromOthers(person.name)));
}

/** A set that lies with the kit of its case is there: the kit is put back first, by whoever has it in their hands. */
async function noneLiesWithAKit(write: Queries, ended: readonly PromiseRow[]): Promise<void> {
  const kits = await setsOnKits(write);
  for (const { setId, caseId } of ended) {
    const kit = kits.get(setId);
    if (kit?.caseId !== caseId) continue;
    const [set] = await write.select({ code: sets.code }).from(sets).where(eq(sets.id, setId));
    throw new TakenBack(refused('frozen', pickWords.stillOnKit(set?.code ?? setId, kit.reference)));
  }
}

async function moveAll(write: Queries, request: ApplyRepair, rows: readonly CaseRow[]): Promise<void> {
  if (request.moves.length === 0) return;
  const ours = new Set<string>(request.moves.map(({ caseId }) => caseId));
  const moves = request.moves.map(({ caseId, startsAt, endsAt }) => {
    const row = rows.find(({ id }) => id === caseId) as CaseRow;
    return { row, theatreId: row.theatreId, startsAt, endsAt };
  });
  for (const { row, ...to } of moves) {
    if (row.cancelledAt !== null)
      throw new TakenBack(refused('frozen', theatreListWords.cancelled(row.reference)));
    const [there] = await write
      .select({ code: sets.code })
      .from(sets)
      .where(and(eq(sets.caseId, row.id), eq(sets.step, 'inTheatre')))
      .limit(1);
    if (there) throw new TakenBack(refused('frozen', theatreListWords.begun(row.reference, there.code)));
    const taken = await theatreTakenBy(write, to, ours);
    if (taken === null) continue;
    const [theatre] = await write.select().from(theatres).where(eq(theatres.id, to.theatreId));
    throw new TakenBack(refused('frozen', words.theatreTaken(theatre?.name ?? to.theatreId, taken)));
  }
  const { lost } = await moveInside(write, { ...request, moves });
  const [first] = lost;
  if (first) throw new TakenBack(refused('frozen', words.wouldLose(first.reference, [first.setCode])));
}

async function give(
  write: Queries,
  { person, now, newId, round }: ApplyRepair,
  { caseId, setId, chosenBy }: { caseId: CaseId; setId: SetId; chosenBy: 'person' | 'planning' },
): Promise<void> {
  const [[booked], [set]] = await Promise.all([
    write.select().from(cases).where(eq(cases.id, caseId)),
    write.select().from(sets).where(eq(sets.id, setId)),
  ]);
  if (!booked || !set) throw new TakenBack(refused('conflict', words.overtaken));
  if (booked.cancelledAt !== null)
    throw new TakenBack(refused('frozen', theatreListWords.cancelled(booked.reference)));
  if (set.withdrawnAt !== null)
    throw new TakenBack(refused('frozen', theatreListWords.outOfService(set.code)));
  if (set.step === 'held') throw new TakenBack(refused('frozen', words.held(set.code)));
  const times = await timesFor(write, booked, setId, round);
  const rival = await rivalFor(write, setId, times, caseId);
  if (rival) throw new TakenBack(refused('frozen', theatreListWords.promisedTo(set.code, rival, now)));
  await keepPromise(write, { setId, caseId, times, chosenBy, personId: person.id, now, newId });
}

async function record(
  write: Queries,
  request: ApplyRepair,
  rows: readonly CaseRow[],
  { given, taken }: RepairApplied,
): Promise<void> {
  const { person, now, newId, kind, caseId } = request;
  const codes = new Map(
    (await write.select({ id: sets.id, code: sets.code }).from(sets)).map(({ id, code }) => [id, code]),
  );
  const codesOf = (list: RepairApplied['given'], id: string) =>
    list.flatMap((one) => (one.caseId === id ? [codes.get(one.setId) ?? one.setId] : []));
  for (const row of rows) {
    const [got, lost] = [codesOf(given, row.id), codesOf(taken, row.id)];
    if (row.id !== caseId && got.length + lost.length === 0) continue;
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'apply-repair',
      subjectKind: 'case',
      subjectId: row.id,
      detail: { kind, forCase: caseId, given: got, taken: lost },
    });
    if (row.surgeonId === person.id || got.length + lost.length === 0) continue;
    await tellPerson(write, {
      personId: row.surgeonId,
      kind: 'caseSetsChanged',
      detail: { caseReference: row.reference, given: got, taken: lost, by: person.name },
      href: `/cases/${row.id}`,
      now,
      newId,
    });
  }
}

/** Found in the middle of writing that it can't be done whole: everything written of it is taken back. */
class TakenBack extends Error {
  constructor(readonly answer: Outcome<never, CaseNow>) {
    super('taken back');
  }
}
