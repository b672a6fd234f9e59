import { and, asc, eq, gte, inArray, or } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { type CycleOutcome, cycleOutcome, cycleSummary } from '@/lib/loads/cycle/summary';
import { type LoadState, loadState } from '@/lib/loads/load';
import { type Programme, programmes } from '@/lib/loads/programme';
import { mayRead, type Reading } from '../../reader';
import { items, loadIndicators, loadPacks, loads, packs, sets, sterilisers } from '../../schema';

export interface SteriliserOnFile {
  id: string;
  name: string;
  programmes: Programme[];
  withdrawnAt: string | null;
}

export interface LoadLine {
  id: string;
  number: string;
  steriliserId: string;
  programme: string;
  state: LoadState;
  /** When it took its present state. */
  since: string;
  madeUpAt: string;
  startedAt: string | null;
  packs: string[];
  /** Looked at since unloading, of all packs. */
  lookedAt: number;
  cycle: CycleOutcome | null;
  pending: number;
  byException: boolean;
}

/** Every steriliser with its programmes, by name. */
export async function listSterilisers(db: Reading): Promise<SteriliserOnFile[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read.select().from(sterilisers).orderBy(asc(sterilisers.name));
  return rows.map((row) => ({ ...row, programmes: programmes.parse(row.programmes) }));
}

/** Loads that are open, and those made up since `from`, the newest first. */
export async function loadBoard(db: Reading, from: string): Promise<LoadLine[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read
    .select()
    .from(loads)
    .where(
      or(inArray(loads.state, ['makingUp', 'running', 'awaitingAcceptance']), gte(loads.madeUpAt, from)),
    );
  // sorted here: sorted there, every load of the years would be gone through in that order
  rows.sort((a, b) => (a.madeUpAt === b.madeUpAt ? 0 : a.madeUpAt < b.madeUpAt ? 1 : -1));
  const ids = rows.map(({ id }) => id);
  if (ids.length === 0) return [];
  const [inside, pending] = await Promise.all([
    read
      .select({ row: loadPacks, code: sets.code, item: items.name, number: packs.number })
      .from(loadPacks)
      .innerJoin(packs, eq(packs.id, loadPacks.packId))
      .leftJoin(sets, eq(sets.id, packs.setId))
      .leftJoin(items, eq(items.id, packs.itemId))
      .where(inArray(loadPacks.loadId, ids))
      .orderBy(asc(loadPacks.putInAt)),
    read
      .select({ loadId: loadIndicators.loadId })
      .from(loadIndicators)
      .where(and(inArray(loadIndicators.loadId, ids), eq(loadIndicators.result, 'pending'))),
  ]);
  const [packsOf, pendingOf] = [
    groupBy(inside, ({ row }) => row.loadId),
    groupBy(pending, ({ loadId }) => loadId),
  ];
  return rows.map((row) => {
    const packed = packsOf.get(row.id) ?? [];
    return {
      id: row.id,
      number: row.number,
      steriliserId: row.steriliserId,
      programme: row.programme,
      state: loadState.parse(row.state),
      since: row.decidedAt ?? row.endedAt ?? row.startedAt ?? row.madeUpAt,
      madeUpAt: row.madeUpAt,
      startedAt: row.startedAt,
      packs: packed.map(({ code, item, number }) => code ?? item ?? number),
      lookedAt: packed.filter((one) => one.row.unloadedAs !== null).length,
      cycle: row.cycle === null ? null : cycleOutcome(cycleSummary.parse(row.cycle)),
      pending: (pendingOf.get(row.id) ?? []).length,
      byException: row.exception !== null,
    };
  });
}
