import { asc, desc, eq, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { z } from 'zod';
import { type Explanation, explanation } from '@/lib/consignment/reconcile';
import { mayRead, type Reading } from '../../reader';
import { items, lenders, people, reconciliationLines, reconciliations } from '../../schema';

export interface ReconciliationOnList {
  id: string;
  number: string;
  how: 'list' | 'count';
  listedOn: string;
  enteredBy: string;
  enteredAt: string;
  closedAt: string | null;
  lots: number;
  unexplained: number;
}

const howOf = (how: string): 'list' | 'count' => (how === 'count' ? 'count' : 'list');

/** The reconciliations with one owner, the newest first. */
export async function listReconciliations(db: Reading, lenderId: string): Promise<ReconciliationOnList[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({
      id: reconciliations.id,
      number: reconciliations.number,
      how: reconciliations.how,
      listedOn: reconciliations.listedOn,
      enteredBy: people.name,
      enteredAt: reconciliations.enteredAt,
      closedAt: reconciliations.closedAt,
      lots: sql<number>`count(${reconciliationLines.id})`,
      unexplained: sql<number>`coalesce(sum(${reconciliationLines.unexplained} <> 0), 0)`,
    })
    .from(reconciliations)
    .innerJoin(people, eq(people.id, reconciliations.enteredBy))
    .leftJoin(reconciliationLines, eq(reconciliationLines.reconciliationId, reconciliations.id))
    .where(eq(reconciliations.lenderId, lenderId))
    .groupBy(reconciliations.id)
    .orderBy(desc(reconciliations.enteredAt), desc(reconciliations.number));
  return rows.map((row) => ({ ...row, how: howOf(row.how) }));
}

export interface ReconciledOnRecord {
  id: string;
  itemId: string;
  code: string;
  name: string;
  lot: string | null;
  listed: number | null;
  onShelf: number;
  withCases: number;
  inSlots: number;
  difference: number;
  explained: Explanation[];
  unexplained: number;
  because: string | null;
  becauseBy: string | null;
}

export interface ReconciliationOnRecord {
  id: string;
  number: string;
  revision: number;
  lenderId: string;
  owner: string;
  how: 'list' | 'count';
  listedOn: string;
  enteredBy: string;
  enteredAt: string;
  closedBy: string | null;
  closedWith: string | null;
  closedAt: string | null;
  lines: ReconciledOnRecord[];
}

const closer = alias(people, 'closer');
const beside = alias(people, 'beside');

/** One reconciliation whole, what nothing explains first; `null` where there is none of that id. */
export async function findReconciliation(db: Reading, id: string): Promise<ReconciliationOnRecord | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [found] = await read
    .select({
      row: reconciliations,
      owner: lenders.name,
      enteredBy: people.name,
      closedBy: closer.name,
      closedWith: beside.name,
    })
    .from(reconciliations)
    .innerJoin(lenders, eq(lenders.id, reconciliations.lenderId))
    .innerJoin(people, eq(people.id, reconciliations.enteredBy))
    .leftJoin(closer, eq(closer.id, reconciliations.closedBy))
    .leftJoin(beside, eq(beside.id, reconciliations.closedWith))
    .where(eq(reconciliations.id, id));
  if (!found) return null;
  const rows = await read
    .select({ line: reconciliationLines, code: items.code, name: items.name, becauseBy: people.name })
    .from(reconciliationLines)
    .innerJoin(items, eq(items.id, reconciliationLines.itemId))
    .leftJoin(people, eq(people.id, reconciliationLines.becauseBy))
    .where(eq(reconciliationLines.reconciliationId, id))
    .orderBy(
      sql`${reconciliationLines.unexplained} = 0`,
      sql`${reconciliationLines.difference} = 0`,
      asc(items.code),
      asc(reconciliationLines.lot),
    );
  const { row, ...named } = found;
  return {
    ...row,
    ...named,
    how: howOf(row.how),
    lines: rows.map(({ line, ...names }) => ({
      ...line,
      ...names,
      explained: z.array(explanation).parse(line.explained),
    })),
  };
}
