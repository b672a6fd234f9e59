import { and, eq, ne, sql } from 'drizzle-orm';
import { usageOrderEntry } from '@/lib/consignment/entries';
import type { NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { consignmentWords as words } from '@/lib/wording/consignment';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { usageOfOwner } from '../../queries/consignment/usageOfOwner';
import type { Person } from '../../queries/people';
import { journalEnd } from '../../queries/shelf/heapAt';
import { lenders, usageOrderLines, usageOrders } from '../../schema';

interface MakeUsageOrder {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

const ROWS_AT_A_TIME = 400;

/**
 * Makes a usage order of all that waits for one: every use of the owner's stock since the order before, and what takes back
 * lines of earlier ones. Made with an id of its own, twice is once; what it has of a move no other order ever has.
 */
export async function makeUsageOrder(
  request: MakeUsageOrder,
): Promise<Outcome<{ id: string; number: string }, never>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'makeUsageOrder')) return refused('notPermitted', words.mayNotMake(person.name));
  const parsed = usageOrderEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { id, lenderId, lines: seen } = parsed.data;
  return db.tx(async (write) => {
    const [before] = await write.select().from(usageOrders).where(eq(usageOrders.id, id));
    if (before)
      return before.madeBy === person.id && before.lenderId === lenderId
        ? { ok: true, value: { id, number: before.number } }
        : refused('conflict', words.idTaken);
    const [lender] = await write.select().from(lenders).where(eq(lenders.id, lenderId));
    if (!lender) return refused('notFound', words.noSuchOwner);
    const [open] = await write
      .select()
      .from(usageOrders)
      .where(and(eq(usageOrders.lenderId, lenderId), eq(usageOrders.state, 'made')));
    if (open) return refused('conflict', words.madeAlready(open.number));
    const { waiting, uncertain: known } = usageOfOwner(write, lenderId);
    const toldUntil = await lastTold(write, lenderId);
    const uncertain = known.filter(({ moves }) => moves.some((seq) => seq > toldUntil));
    if (waiting.length === 0) return refused('frozen', words.nothingWaits);
    if (waiting.length !== seen) return refused('conflict', words.moreWaits(seen, waiting.length));
    const [last] = await write
      .select({ number: sql<number | null>`max(CAST(substr(${usageOrders.number}, 4) AS INTEGER))` })
      .from(usageOrders);
    const number = `UO-${String((last?.number ?? 0) + 1).padStart(4, '0')}`;
    await write.insert(usageOrders).values({
      id,
      number,
      lenderId,
      state: 'made',
      madeBy: person.id,
      madeAt: now,
      journalSeq: await journalEnd(write),
      uncertain,
      revision: 1,
    });
    const rows = waiting.map((line, at) => ({
      ...line,
      id: newId('usageLine'),
      orderId: id,
      lineNo: at + 1,
      replace: null,
      withdrawn: false,
    }));
    for (let at = 0; at < rows.length; at += ROWS_AT_A_TIME)
      await write.insert(usageOrderLines).values(rows.slice(at, at + ROWS_AT_A_TIME));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'make-usage-order',
      subjectKind: 'usageOrder',
      subjectId: id,
      detail: {
        number,
        lenderId,
        moves: waiting.map(({ way, moveSeq, pieces }) => ({ way, moveSeq, pieces })),
        uncertain: uncertain.length,
      },
    });
    return { ok: true, value: { id, number } };
  });
}

/** How far the journal went as the owner was last told; what was uncertain then is not told again. */
async function lastTold(write: Queries, lenderId: string): Promise<number> {
  const [last] = await write
    .select({ seq: sql<number | null>`max(${usageOrders.journalSeq})` })
    .from(usageOrders)
    .where(and(eq(usageOrders.lenderId, lenderId), ne(usageOrders.state, 'withdrawn')));
  return last?.seq ?? 0;
}
