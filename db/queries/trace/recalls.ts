import { eq, inArray } from 'drizzle-orm';
import { type CasePageAsked, FIRST_CASES } from '@/lib/trace/casePage';
import type { LotBalance } from '@/lib/trace/lotTrace';
import {
  type RecallOf,
  type RecallReach,
  type RecallTask,
  recallReach as reachSchema,
  recallTask,
} from '@/lib/trace/recall';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { people, recallHolds, recalls, recallTasks, stock } from '../../schema';
import { blindTo } from './blindTo';
import { type CasesSeen, lotTraced, type NamedSet, namesOfSets } from './lot';
import { reachOfTrace, recallReach } from './reach';
import { type CasesAsked, casesSeen } from './reachedCases';
import { type ReachSeen, reachSeen } from './reachSeen';
import { recallNames } from './recallNames';
import { ofRecall, type RecallRow } from './recallRow';

interface RecallOnFile {
  id: string;
  number: string;
  revision: number;
  of: RecallOf;
  what: string;
  href: string;
  reason: string;
  noticeReference: string | null;
  isRehearsal: boolean;
  opened: { at: string; by: string };
  closed: { at: string; by: string; with: string; because: string } | null;
  /** As it was opened, and, while it is open, as things are now. */
  found: ReachSeen;
  reach: ReachSeen;
  /** The first page of those it reaches, or what is asked for. */
  cases: CasesSeen;
  holds: {
    setId: string | null;
    stockId: string | null;
    name: string;
    /** `null`: the reader counts that set, and is not to see what lies in it. */
    pieces: number | null;
    /** Whether it is held still; of a set, for this or another reason. */
    heldStill: boolean;
  }[];
  sets: Map<string, NamedSet>;
  tasks: {
    personId: string;
    name: string;
    task: RecallTask;
    acknowledgedAt: string | null;
    note: string | null;
  }[];
  /** The reader counts a set it reaches, and is not to see what lies in it. */
  isBlind: boolean;
  /** Of a lot: now, or as it was closed; `null` for anything else, and where the reader counts a set it lies in. */
  balance: LotBalance | null;
}

export async function findRecall(
  db: Reading,
  id: string,
  asked: CasesAsked = FIRST_CASES,
): Promise<RecallOnFile | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read.select().from(recalls).where(eq(recalls.id, id));
  if (!row) return null;
  const of = ofRecall(row);
  const asOpened = reachSchema.parse(row.found);
  const isOpen = row.closedAt === null;
  const { lot, reach: asIs } = await reachNow(read, row, of, asOpened);
  const blind = await blindTo(db, of);
  const { sets: hidden } = blind;
  const [found, reach] = [reachSeen(asOpened, blind), reachSeen(asIs, blind)];
  const isBlind = [...asIs.sets, ...asOpened.sets, ...(lot?.trace.slots ?? [])].some(({ setId }) =>
    hidden.has(setId),
  );
  const holds = await read.select().from(recallHolds).where(eq(recallHolds.recallId, id));
  const tasks = await read.select().from(recallTasks).where(eq(recallTasks.recallId, id));
  const names = await namesOfPeople(read, [
    row.openedBy,
    ...tasks.map(({ personId }) => personId),
    ...[row.closedBy, row.closedWith].filter((one) => one !== null),
  ]);
  const nameOf = (personId: string | null) => names.get(personId ?? '') ?? 'somebody';
  const sets = namesOfSets(read, [
    ...holds.flatMap(({ setId }) => setId ?? []),
    ...reach.sets.map(({ setId }) => setId),
    ...reach.unknownLots,
    ...reach.contradictions.map(({ setId }) => setId),
  ]);
  const heaps = await heapsOf(
    read,
    holds.flatMap(({ stockId }) => stockId ?? []),
  );
  return {
    id: row.id,
    number: row.number,
    revision: row.revision,
    of,
    ...(await recallNames(read, of)),
    reason: row.reason,
    noticeReference: row.noticeReference,
    isRehearsal: row.isRehearsal,
    opened: { at: row.openedAt, by: nameOf(row.openedBy) },
    closed:
      row.closedAt === null
        ? null
        : {
            at: row.closedAt,
            by: nameOf(row.closedBy),
            with: nameOf(row.closedWith),
            because: row.closedBecause ?? '',
          },
    found,
    reach,
    cases: casesSeen(read, reach.cases, asked),
    holds: holds.map(({ setId, stockId, pieces }) => ({
      setId,
      stockId,
      pieces: setId !== null && hidden.has(setId) ? null : pieces,
      name: setId === null ? (heaps.get(stockId ?? '')?.name ?? '') : (sets.get(setId)?.code ?? setId),
      heldStill: setId === null ? heaps.get(stockId ?? '')?.held === true : sets.get(setId)?.step === 'held',
    })),
    sets,
    tasks: tasks
      .map(({ personId, task, acknowledgedAt, note }) => ({
        personId,
        name: nameOf(personId),
        task: recallTask.parse(task),
        acknowledgedAt,
        note,
      }))
      .sort((a, b) => a.name.localeCompare(b.name, 'en') || a.task.localeCompare(b.task)),
    isBlind,
    balance: isBlind ? null : isOpen ? (lot?.trace.balance ?? null) : (row.balance as LotBalance | null),
  };
}

/** One page of the cases of a recall: while it is open as things are now, then as it was found. `null`: no such recall. */
export async function recallCases(db: Reading, id: string, asked: CasePageAsked): Promise<CasesSeen | null> {
  mayRead(db, 'readHospital');
  const [row] = await db.read.select().from(recalls).where(eq(recalls.id, id));
  if (!row) return null;
  const of = ofRecall(row);
  const { reach } = await reachNow(db.read, row, of, reachSchema.parse(row.found));
  return casesSeen(db.read, reachSeen(reach, await blindTo(db, of)).cases, asked);
}

/** What a recall reaches as things are; once it is closed, what it reached as it was opened. */
async function reachNow(read: Queries, { closedAt }: RecallRow, of: RecallOf, asOpened: RecallReach) {
  if (closedAt !== null) return { lot: null, reach: asOpened };
  const lot = of.kind === 'lot' ? await lotTraced(read, of.itemId, of.lot) : null;
  return { lot, reach: (lot ? reachOfTrace(lot) : await recallReach(read, of)) ?? asOpened };
}

async function namesOfPeople(read: Queries, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await read
    .select({ id: people.id, name: people.name })
    .from(people)
    .where(inArray(people.id, [...new Set(ids)]));
  return new Map(rows.map(({ id, name }) => [id, name]));
}

async function heapsOf(read: Queries, ids: readonly string[]) {
  const found = new Map<string, { name: string; held: boolean }>();
  for (let at = 0; at < ids.length; at += 400) {
    const rows = await read
      .select()
      .from(stock)
      .where(inArray(stock.id, ids.slice(at, at + 400)));
    for (const { id, lot, useBy, heldBecause } of rows)
      found.set(id, {
        name: `lot ${lot ?? 'not known'}${useBy === null ? '' : `, use by ${useBy}`}`,
        held: heldBecause !== null,
      });
  }
  return found;
}
