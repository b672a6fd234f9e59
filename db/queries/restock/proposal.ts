import { asc, desc, eq, getTableColumns, type SQL } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { WorkingStep } from '@/lib/calculations/calculation';
import type { ReorderOutput } from '@/lib/calculations/reorder/schema';
import { keptAnswer, keptMissing, keptWorking } from '@/lib/restock/shown';
import { mayRead, type Reading } from '../../reader';
import { items, makers, people, restockLines, restocks, supplyOrders } from '../../schema';

export interface ProposalLine {
  id: string;
  itemId: string;
  code: string;
  name: string;
  kind: string;
  makerId: string;
  maker: string;
  mustHaveClass: number | null;
  proposed: number;
  packOf: number;
  unitPence: number | null;
  onHand: number;
  onOrder: number;
  committed: number;
  toRefill: number;
  sentence: string;
  answer: ReorderOutput | null;
  working: WorkingStep[];
  missing: string[];
  approved: number | null;
  changedBecause: string | null;
}

export interface Proposal {
  id: string;
  number: string;
  state: 'proposed' | 'approved' | 'superseded' | 'turnedDown';
  proposedBy: string;
  proposedAt: string;
  lookedAt: number;
  enough: number;
  withoutUse: number;
  decidedBy: string | null;
  decidedAt: string | null;
  because: string | null;
  revision: number;
  lines: ProposalLine[];
  orders: { id: string; number: string; maker: string }[];
}

/** The input is looked at one by one: it holds a whole record. */
const { input: _, ...shownColumns } = getTableColumns(restockLines);
const decider = alias(people, 'decider');

/** The newest proposal, with its lines and what was ordered of it; `null` where there has been none. */
export async function latestProposal(db: Reading): Promise<Proposal | null> {
  mayRead(db, 'readHospital');
  return proposalWhere(db, undefined);
}

/** One proposal as `latestProposal` tells it; `null` where there is none of that id. */
export async function findProposal(db: Reading, id: string): Promise<Proposal | null> {
  mayRead(db, 'readHospital');
  return proposalWhere(db, eq(restocks.id, id));
}

async function proposalWhere(db: Reading, where: SQL | undefined): Promise<Proposal | null> {
  const { read } = db;
  const [found] = await read
    .select({ row: restocks, by: people.name, decided: decider.name })
    .from(restocks)
    .innerJoin(people, eq(people.id, restocks.proposedBy))
    .leftJoin(decider, eq(decider.id, restocks.decidedBy))
    .where(where)
    .orderBy(desc(restocks.number))
    .limit(1);
  if (!found) return null;
  const { row, by, decided } = found;
  const [lines, orders] = await Promise.all([
    read
      .select({
        line: shownColumns,
        code: items.code,
        name: items.name,
        kind: items.kind,
        maker: makers.name,
      })
      .from(restockLines)
      .innerJoin(items, eq(items.id, restockLines.itemId))
      .innerJoin(makers, eq(makers.id, restockLines.makerId))
      .where(eq(restockLines.restockId, row.id))
      .orderBy(asc(items.code)),
    read
      .select({ id: supplyOrders.id, number: supplyOrders.number, maker: makers.name })
      .from(supplyOrders)
      .innerJoin(makers, eq(makers.id, supplyOrders.makerId))
      .where(eq(supplyOrders.restockId, row.id))
      .orderBy(asc(supplyOrders.number)),
  ]);
  return {
    ...row,
    state: row.state as Proposal['state'],
    proposedBy: by,
    decidedBy: decided,
    lines: lines.map(({ line, ...item }) => ({
      ...line,
      ...item,
      answer: keptAnswer.parse(line.answer),
      working: keptWorking.parse(line.working),
      missing: keptMissing.parse(line.missing),
    })),
    orders,
  };
}

/** What the calculation was asked for one line of a proposal; `null` where there is no such line. */
export async function inputOfRestockLine(db: Reading, id: string): Promise<unknown | null> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({ input: restockLines.input })
    .from(restockLines)
    .where(eq(restockLines.id, id));
  return row?.input ?? null;
}
