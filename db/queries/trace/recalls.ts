import { desc, eq, inArray } from 'drizzle-orm';
import type { LotBalance } from '@/lib/trace/lotTrace';
import {
  type RecallOf,
  type RecallReach,
  type RecallTask,
  recallReach as reachSchema,
  recallOf,
  recallTask,
} from '@/lib/trace/recall';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { people, recallHolds, recalls, recallTasks, stock } from '../../schema';
import { type NamedCase, type NamedSet, namesOfCases, namesOfSets } from './lot';
import { lotOnRecord } from './lotFacts';
import { recallReach } from './reach';
import { recallNames } from './recallNames';

export interface RecallInList {
  id: string;
  number: string;
  what: string;
  reason: string;
  isRehearsal: boolean;
  openedAt: string;
  openedBy: string;
  closedAt: string | null;
  /** Cases that had it, or may have had it, as it was opened. */
  confirmed: number;
  possible: number;
  acknowledged: number;
  asked: number;
}

type RecallRow = typeof recalls.$inferSelect;

/** What a recall is of, from its row. */
const ofRecall = ({ kind, itemId: item, lot, setId, loadId }: RecallRow): RecallOf =>
  recallOf.parse({
    kind,
    ...(kind === 'lot' ? { itemId: item, lot } : kind === 'item' ? { itemId: item } : {}),
    ...(kind === 'set' ? { setId } : {}),
    ...(kind === 'load' ? { loadId } : {}),
  });

/** Every recall, open ones first, the newest first. */
export async function listRecalls(db: Reading): Promise<RecallInList[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read.select().from(recalls).orderBy(desc(recalls.openedAt));
  const tasks = await read.select().from(recallTasks);
  const names = await namesOfPeople(
    read,
    rows.map(({ openedBy }) => openedBy),
  );
  const listed: RecallInList[] = [];
  for (const row of rows) {
    const { cases } = reachSchema.parse(row.found);
    const asked = tasks.filter(({ recallId }) => recallId === row.id);
    listed.push({
      id: row.id,
      number: row.number,
      what: (await recallNames(read, ofRecall(row))).what,
      reason: row.reason,
      isRehearsal: row.isRehearsal,
      openedAt: row.openedAt,
      openedBy: names.get(row.openedBy) ?? 'somebody',
      closedAt: row.closedAt,
      confirmed: cases.filter(({ standing }) => standing === 'confirmed').length,
      possible: cases.filter(({ standing }) => standing === 'possible').length,
      acknowledged: asked.filter(({ acknowledgedAt }) => acknowledgedAt !== null).length,
      asked: asked.length,
    });
  }
  return listed.sort((a, b) => Number(a.closedAt !== null) - Number(b.closedAt !== null));
}

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
  found: RecallReach;
  reach: RecallReach;
  cases: Map<string, NamedCase>;
  holds: {
    setId: string | null;
    stockId: string | null;
    name: string;
    pieces: number;
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
  /** Of a lot: now, or as it was closed; `null` for anything else. */
  balance: LotBalance | null;
}

export async function findRecall(db: Reading, id: string): Promise<RecallOnFile | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read.select().from(recalls).where(eq(recalls.id, id));
  if (!row) return null;
  const of = ofRecall(row);
  const found = reachSchema.parse(row.found);
  const reach = row.closedAt === null ? ((await recallReach(read, of)) ?? found) : found;
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
    cases: namesOfCases(
      read,
      [...reach.cases, ...found.cases].map(({ caseId }) => caseId),
    ),
    holds: holds.map(({ setId, stockId, pieces }) => ({
      setId,
      stockId,
      pieces,
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
    balance:
      row.closedAt === null && of.kind === 'lot'
        ? (lotOnRecord(read, of.itemId, of.lot)?.trace.balance ?? null)
        : (row.balance as LotBalance | null),
  };
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
