import { and, eq, inArray } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { cases, setPromises, sets } from '../../schema';
import { tellPerson } from '../turns/tell-person';
import type { CaseRow } from './at-case';
import { keepPromise, type RoundTimes, rivalFor, timesFor } from './promises';

/** Where a case goes. */
export interface Move {
  row: CaseRow;
  theatreId: string;
  startsAt: string;
  endsAt: string;
}

/** A set that a moved case can no longer count on: another case has it over the new time, or it is out of service. */
export interface LostPromise {
  caseId: string;
  reference: string;
  setId: string;
  setCode: string;
}

interface MoveInside {
  moves: readonly Move[];
  round: RoundTimes;
  person: Person;
  now: string;
  newId: NewId;
}

/**
 * Moves cases together, inside the caller's transaction, which has seen to it that the theatres are free. Each keeps the
 * sets promised to it wherever they can be kept; what somebody chose goes before what planning chose, and the earlier
 * case before the later. The surgeons are told, and of what is lost, too.
 */
export async function moveInside(write: Queries, request: MoveInside): Promise<{ lost: LostPromise[] }> {
  const { moves, round, person, now, newId } = request;
  const ids = moves.map(({ row }) => row.id);
  const promised = await write
    .select({ promise: setPromises, setCode: sets.code, withdrawnAt: sets.withdrawnAt })
    .from(setPromises)
    .innerJoin(sets, eq(sets.id, setPromises.setId))
    .where(inArray(setPromises.caseId, ids));
  await write.delete(setPromises).where(inArray(setPromises.caseId, ids));
  for (const { row, theatreId, startsAt, endsAt } of moves) {
    const caseDate: PlainDate = wallClock(startsAt).date;
    await write
      .update(cases)
      .set({ theatreId, startsAt, endsAt, caseDate, revision: row.revision + 1 })
      .where(and(eq(cases.id, row.id), eq(cases.revision, row.revision)));
  }
  const moveOf = new Map(moves.map((move) => [move.row.id, move]));
  const inTurn = promised
    .map((one) => ({ ...one, move: moveOf.get(one.promise.caseId) as Move }))
    .sort(
      (a, b) =>
        Number(a.promise.chosenBy === 'planning') - Number(b.promise.chosenBy === 'planning') ||
        a.move.startsAt.localeCompare(b.move.startsAt) ||
        a.setCode.localeCompare(b.setCode),
    );
  const lost: LostPromise[] = [];
  for (const { promise, setCode, withdrawnAt, move } of inTurn) {
    const { setId, caseId } = promise;
    const times = await timesFor(write, move, setId, round);
    if (withdrawnAt !== null || (await rivalFor(write, setId, times, caseId))) {
      lost.push({ caseId, reference: move.row.reference, setId, setCode });
      continue;
    }
    const chosenBy = promise.chosenBy === 'planning' ? 'planning' : 'person';
    await keepPromise(write, {
      setId,
      caseId,
      times,
      chosenBy,
      personId: promise.promisedBy ?? person.id,
      now,
      newId,
    });
  }
  for (const move of moves) {
    const lostHere = lost.filter(({ caseId }) => caseId === move.row.id).map(({ setCode }) => setCode);
    await tellOfMove(write, request, move, lostHere);
  }
  return { lost };
}

async function tellOfMove(
  write: Queries,
  { person, now, newId }: MoveInside,
  { row, theatreId, startsAt, endsAt }: Move,
  lostSets: string[],
): Promise<void> {
  await appendLedger(write, {
    doneAt: now,
    enteredAt: now,
    personId: person.id,
    action: 'move-case',
    subjectKind: 'case',
    subjectId: row.id,
    detail: {
      from: { theatreId: row.theatreId, startsAt: row.startsAt, endsAt: row.endsAt },
      to: { theatreId, startsAt, endsAt },
      ...(lostSets.length > 0 ? { lostSets } : {}),
    },
  });
  if (row.surgeonId === person.id) return;
  await tellPerson(write, {
    personId: row.surgeonId,
    kind: 'caseMoved',
    detail: { caseReference: row.reference, from: row.startsAt, to: startsAt, lostSets, by: person.name },
    href: `/cases/${row.id}`,
    now,
    newId,
  });
}
