import { asc, eq, inArray, isNull, sql } from 'drizzle-orm';
import { z } from 'zod';
import type { LotAccount } from '@/lib/consignment/account';
import type { UsageLine } from '@/lib/consignment/waiting';
import { mayRead, type Reading } from '../../reader';
import { cases, items, lenders, usageOrders } from '../../schema';
import { accountsOfOwner } from './ownedMoves';
import { ownersOnRecord, usageOfOwner } from './usageOfOwner';
import { namedUncertain, type UsageOrderOnRecord } from './usageOrders';

/** An owner of stock that lies here, and what waits for it. */
export interface OwnerOnList {
  id: string;
  name: string;
  inUse: boolean;
  onShelf: number;
  withCases: number;
  /** What waits for a usage order. */
  lines: number;
  pieces: number;
  /** Ways in which pieces left a slot that may have been theirs. */
  uncertain: number;
  /** A usage order that is made or approved and not sent. */
  open: { id: string; number: string; state: string } | null;
  lastSentAt: string | null;
}

const usedPieces = (lines: readonly UsageLine[]) =>
  lines.reduce((sum, { way, pieces }) => sum + (way === 'used' ? pieces : 0), 0);

/** Every owner of consigned stock, by name. */
export async function listOwners(db: Reading): Promise<OwnerOnList[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const ids = ownersOnRecord(read);
  if (ids.length === 0) return [];
  const [rows, orders] = await Promise.all([
    read.select().from(lenders).where(inArray(lenders.id, ids)).orderBy(asc(lenders.name)),
    read
      .select()
      .from(usageOrders)
      .where(inArray(usageOrders.lenderId, ids))
      .orderBy(asc(usageOrders.madeAt)),
  ]);
  return rows.map(({ id, name, withdrawnAt }) => {
    const accounts = accountsOfOwner(read, id);
    const { waiting, uncertain } = usageOfOwner(read, id);
    const own = orders.filter(({ lenderId }) => lenderId === id);
    const open = own.find(({ state }) => state === 'made' || state === 'approved');
    const sent = own.flatMap(({ sentAt }) => (sentAt === null ? [] : [sentAt])).sort();
    return {
      ...{ id, name, inUse: withdrawnAt === null },
      onShelf: accounts.reduce((sum, { onShelf }) => sum + onShelf, 0),
      withCases: accounts.reduce((sum, { withCases }) => sum + withCases, 0),
      lines: waiting.length,
      pieces: usedPieces(waiting),
      uncertain: uncertain.length,
      open: open ? { id: open.id, number: open.number, state: open.state } : null,
      lastSentAt: sent.at(-1) ?? null,
    };
  });
}

export interface WaitingLine extends UsageLine {
  code: string;
  name: string;
  reference: string | null;
}

export interface AccountOnScreen extends LotAccount {
  code: string;
  name: string;
}

export interface OwnerOnScreen {
  id: string;
  name: string;
  inUse: boolean;
  waiting: WaitingLine[];
  uncertain: UsageOrderOnRecord['uncertain'];
  /** Of each lot what came and where it went. */
  accounts: AccountOnScreen[];
  /** What lies in slots of sets and may be theirs, by item. */
  inSlots: { code: string; name: string; lo: number; hi: number }[];
}

/** One owner with everything that is on record of its stock; `null` where there is none of that id. */
export async function findOwner(db: Reading, id: string): Promise<OwnerOnScreen | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [lender] = await read.select().from(lenders).where(eq(lenders.id, id));
  if (!lender) return null;
  const { waiting, uncertain, inSlots } = usageOfOwner(read, id);
  const accounts = accountsOfOwner(read, id);
  const itemIds = [...waiting, ...accounts, ...inSlots].map(({ itemId }) => itemId);
  const caseIds = waiting.flatMap(({ caseId }) => (caseId === null ? [] : [caseId]));
  const [ofItems, ofCases, named] = await Promise.all([
    read
      .select({ id: items.id, code: items.code, name: items.name })
      .from(items)
      .where(inArray(items.id, [...new Set(itemIds)])),
    read
      .select({ id: cases.id, reference: cases.reference })
      .from(cases)
      .where(inArray(cases.id, [...new Set(caseIds)])),
    namedUncertain(read, uncertain),
  ]);
  const itemOf = new Map(ofItems.map(({ id: itemId, code, name }) => [itemId, { code, name }]));
  const called = (itemId: string) => itemOf.get(itemId) ?? { code: itemId, name: itemId };
  const referenceOf = new Map(ofCases.map((one) => [one.id, one.reference]));
  return {
    ...{ id, name: lender.name, inUse: lender.withdrawnAt === null },
    waiting: waiting.map((line) => ({
      ...line,
      ...called(line.itemId),
      reference: line.caseId === null ? null : (referenceOf.get(line.caseId) ?? line.caseId),
    })),
    uncertain: named,
    accounts: accounts
      .map((account) => ({ ...account, ...called(account.itemId) }))
      .sort((a, b) => a.code.localeCompare(b.code) || (a.lot ?? '').localeCompare(b.lot ?? '')),
    inSlots: inSlots.map(({ itemId, lo, hi }) => ({ ...called(itemId), lo, hi })),
  };
}

/** Consigned pieces of a lot whose owner nobody has stated. */
export interface LotNotStated {
  itemId: string;
  code: string;
  name: string;
  maker: string;
  lot: string | null;
  onShelf: number;
  /** The suppliers that deliveries of it name. */
  deliveredBy: string[];
}

export async function lotsOfNobodyStated(db: Reading): Promise<LotNotStated[]> {
  mayRead(db, 'readHospital');
  const rows = db.read.all<Omit<LotNotStated, 'deliveredBy'> & { suppliers: string }>(sql`
    SELECT item.id AS itemId, item.code, item.name, maker.name AS maker, heap.lot, sum(heap.quantity) AS onShelf,
      (SELECT json_group_array(DISTINCT delivery.supplier) FROM delivery_lines line
        JOIN deliveries delivery ON delivery.id = line.delivery_id
        WHERE line.item_id = item.id AND line.lot IS heap.lot AND line.owner = 'consignment') AS suppliers
    FROM stock heap JOIN items item ON item.id = heap.item_id JOIN makers maker ON maker.id = item.maker_id
    WHERE heap.owner = 'consignment' AND heap.lender_id IS NULL
    GROUP BY item.id, heap.lot ORDER BY sum(heap.quantity) = 0, item.code, heap.lot`);
  return rows.map(({ suppliers, ...row }) => ({
    ...row,
    deliveredBy: z.array(z.string()).parse(JSON.parse(suppliers)),
  }));
}

/** Owners that can be named: firms on record, in use. */
export async function ownersToName(db: Reading): Promise<{ id: string; name: string }[]> {
  mayRead(db, 'readHospital');
  return db.read
    .select({ id: lenders.id, name: lenders.name })
    .from(lenders)
    .where(isNull(lenders.withdrawnAt))
    .orderBy(asc(lenders.name));
}
