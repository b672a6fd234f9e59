import { asc, desc, eq, inArray, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { z } from 'zod';
import { usageOutcome } from '@/lib/consignment/outcome';
import { type UsageOrderState, usageOrderState } from '@/lib/consignment/state';
import { mayRead, type Reading } from '../../reader';
import { cases, items, lenders, people, sets, usageOrderLines, usageOrders } from '../../schema';

export interface UsageOrderOnList {
  id: string;
  number: string;
  owner: string;
  lenderId: string;
  state: UsageOrderState;
  madeAt: string;
  madeBy: string;
  sentAt: string | null;
  lines: number;
  pieces: number;
  toReplace: number;
}

/** Usage orders, the newest first; of one owner, or of all. */
export async function listUsageOrders(
  db: Reading,
  lenderId: string | null = null,
): Promise<UsageOrderOnList[]> {
  mayRead(db, 'readHospital');
  const sum = (wanted: ReturnType<typeof sql>) =>
    sql<number>`coalesce(sum(iif(${wanted}, ${usageOrderLines.pieces}, 0)), 0)`;
  const rows = await db.read
    .select({
      id: usageOrders.id,
      number: usageOrders.number,
      owner: lenders.name,
      lenderId: usageOrders.lenderId,
      state: usageOrders.state,
      madeAt: usageOrders.madeAt,
      madeBy: people.name,
      sentAt: usageOrders.sentAt,
      lines: sql<number>`count(${usageOrderLines.id})`,
      pieces: sum(sql`${usageOrderLines.way} = 'used'`),
      toReplace: sum(sql`${usageOrderLines.way} = 'used' AND ${usageOrderLines.replace} = 1`),
    })
    .from(usageOrders)
    .innerJoin(lenders, eq(lenders.id, usageOrders.lenderId))
    .innerJoin(people, eq(people.id, usageOrders.madeBy))
    .leftJoin(usageOrderLines, eq(usageOrderLines.orderId, usageOrders.id))
    .where(lenderId === null ? undefined : eq(usageOrders.lenderId, lenderId))
    .groupBy(usageOrders.id)
    .orderBy(desc(usageOrders.madeAt), desc(usageOrders.number));
  return rows.map((row) => ({ ...row, state: usageOrderState.parse(row.state) }));
}

const uncertainRows = z.array(
  z.object({
    setId: z.string(),
    itemId: z.string(),
    caseId: z.string().nullable(),
    outcome: usageOutcome.or(z.literal('setAside')),
    pieces: z.number(),
    lo: z.number(),
    hi: z.number(),
  }),
);

export interface UsageOrderLineOnRecord {
  id: string;
  lineNo: number;
  way: 'used' | 'takenBack';
  moveSeq: number;
  itemId: string;
  code: string;
  gtin: string | null;
  name: string;
  lot: string | null;
  useBy: string | null;
  pieces: number;
  outcome: z.infer<typeof usageOutcome>;
  caseId: string | null;
  reference: string | null;
  doneOn: string;
  knownBy: 'heap' | 'lotRead' | 'othersTooFew';
  replace: boolean | null;
}

export interface UsageOrderOnRecord {
  id: string;
  number: string;
  revision: number;
  state: UsageOrderState;
  lenderId: string;
  owner: string;
  /** The address it goes to, as the owner's record has it. */
  address: string | null;
  madeBy: string;
  madeAt: string;
  approvedBy: string | null;
  approvedAt: string | null;
  sentBy: string | null;
  sentAt: string | null;
  sentHow: string | null;
  withdrawnBy: string | null;
  withdrawnAt: string | null;
  withdrawnBecause: string | null;
  settledBy: string | null;
  settledAt: string | null;
  settledBecause: string | null;
  lines: UsageOrderLineOnRecord[];
  uncertain: {
    set: string;
    code: string;
    name: string;
    reference: string | null;
    outcome: z.infer<typeof usageOutcome> | 'setAside';
    pieces: number;
    lo: number;
    hi: number;
  }[];
}

const approver = alias(people, 'approver');
const sender = alias(people, 'sender');
const withdrawer = alias(people, 'withdrawer');
const settler = alias(people, 'settler');

/** One usage order whole; `null` where there is none of that id. It names cases by their opaque reference alone. */
export async function findUsageOrder(db: Reading, id: string): Promise<UsageOrderOnRecord | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [found] = await read
    .select({
      row: usageOrders,
      owner: lenders.name,
      address: lenders.address,
      madeBy: people.name,
      approvedBy: approver.name,
      sentBy: sender.name,
      withdrawnBy: withdrawer.name,
      settledBy: settler.name,
    })
    .from(usageOrders)
    .innerJoin(lenders, eq(lenders.id, usageOrders.lenderId))
    .innerJoin(people, eq(people.id, usageOrders.madeBy))
    .leftJoin(approver, eq(approver.id, usageOrders.approvedBy))
    .leftJoin(sender, eq(sender.id, usageOrders.sentBy))
    .leftJoin(withdrawer, eq(withdrawer.id, usageOrders.withdrawnBy))
    .leftJoin(settler, eq(settler.id, usageOrders.settledBy))
    .where(eq(usageOrders.id, id));
  if (!found) return null;
  const lines = await read
    .select({
      line: usageOrderLines,
      code: items.code,
      gtin: items.gtin,
      name: items.name,
      reference: cases.reference,
    })
    .from(usageOrderLines)
    .innerJoin(items, eq(items.id, usageOrderLines.itemId))
    .leftJoin(cases, eq(cases.id, usageOrderLines.caseId))
    .where(eq(usageOrderLines.orderId, id))
    .orderBy(asc(items.code), asc(usageOrderLines.lot), asc(usageOrderLines.lineNo));
  const { row, ...named } = found;
  const { uncertain: kept, journalSeq: _journalSeq, ...facts } = row;
  return {
    ...facts,
    ...named,
    state: usageOrderState.parse(row.state),
    lines: lines.map(({ line, ...names }) => ({
      ...line,
      ...names,
      way: line.way === 'takenBack' ? 'takenBack' : 'used',
      outcome: usageOutcome.parse(line.outcome),
      knownBy: z.enum(['heap', 'lotRead', 'othersTooFew']).parse(line.knownBy),
    })),
    uncertain: await namedUncertain(read, uncertainRows.parse(kept)),
  };
}

/** Uncertain pieces with the names of their set, item and case. */
export async function namedUncertain(
  read: Reading['read'],
  rows: z.infer<typeof uncertainRows>,
): Promise<UsageOrderOnRecord['uncertain']> {
  if (rows.length === 0) return [];
  const [ofSets, ofItems, ofCases] = await Promise.all([
    read
      .select({ id: sets.id, code: sets.code })
      .from(sets)
      .where(
        inArray(
          sets.id,
          rows.map(({ setId }) => setId),
        ),
      ),
    read
      .select({ id: items.id, code: items.code, name: items.name })
      .from(items)
      .where(
        inArray(
          items.id,
          rows.map(({ itemId }) => itemId),
        ),
      ),
    read
      .select({ id: cases.id, reference: cases.reference })
      .from(cases)
      .where(
        inArray(
          cases.id,
          rows.flatMap(({ caseId }) => (caseId === null ? [] : [caseId])),
        ),
      ),
  ]);
  const codeOf = new Map(ofSets.map(({ id, code }) => [id, code]));
  const itemOf = new Map(ofItems.map((item) => [item.id, item]));
  const referenceOf = new Map(ofCases.map(({ id, reference }) => [id, reference]));
  return rows.map(({ setId, itemId, caseId, outcome, pieces, lo, hi }) => ({
    set: codeOf.get(setId) ?? setId,
    code: itemOf.get(itemId)?.code ?? itemId,
    name: itemOf.get(itemId)?.name ?? itemId,
    reference: caseId === null ? null : (referenceOf.get(caseId) ?? caseId),
    ...{ outcome, pieces, lo, hi },
  }));
}
