import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import { desc, eq } from 'drizzle-orm';
import { type NewId, type RestockId, restockId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { isWorthALook, type ProposedLine, proposeFor } from '@/lib/restock/proposal';
import { restockActWords as words } from '@/lib/wording/restock-acts';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { type RestockFacts, restockFacts } from '../../queries/restock/facts';
import { restockLines, restocks } from '../../schema';

interface ProposeRestock {
  db: Pick<Database, 'read' | 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
}

/** Others wait no longer than about this while lines are worked out. */
const TURN_MS = 25;
const ROWS_AT_A_TIME = 400;

/**
 * Has what to order worked out from how things stand, and keeps it with its reasons. It orders nothing: approving it is
 * another act. An earlier proposal that nobody has decided on is superseded.
 */
export async function proposeRestock(
  request: ProposeRestock,
): Promise<Outcome<{ id: RestockId; number: string }, never>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'proposeRestock')) return refused('notPermitted', words.mayNotPropose(person.name));
  const facts = await restockFacts({ read: db.read, reader: person }, now);
  const lines = await linesOf(facts);
  const shown = lines.filter(isWorthALook);
  const counted = {
    lookedAt: lines.length,
    enough: lines.filter(({ order, lacking, answer }) => order === 0 && lacking === 0 && answer !== null)
      .length,
    withoutUse: lines.filter((line) => line.answer === null && !isWorthALook(line)).length,
  };
  return db.tx(async (write) => {
    const id = restockId.parse(newId('restock'));
    const [last] = await write.select().from(restocks).orderBy(desc(restocks.number)).limit(1);
    const number = `RS-${String(Number(last?.number.slice(3) ?? 0) + 1).padStart(4, '0')}`;
    const superseded = await supersede(write, now);
    await write.insert(restocks).values({
      id,
      number,
      state: 'proposed',
      proposedBy: person.id,
      proposedAt: now,
      ...counted,
      settings: facts.settings,
      revision: 1,
    });
    const rows = shown.map((line) => ({
      ...rowOf(line),
      id: newId('restockLine'),
      restockId: id,
    }));
    for (let at = 0; at < rows.length; at += ROWS_AT_A_TIME)
      await write.insert(restockLines).values(rows.slice(at, at + ROWS_AT_A_TIME));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'propose-restock',
      subjectKind: 'restock',
      subjectId: id,
      detail: { number, ...counted, lines: rows.length, superseded },
    });
    return { ok: true, value: { id, number } };
  });
}

async function linesOf(facts: RestockFacts): Promise<ProposedLine[]> {
  const lines: ProposedLine[] = [];
  let turn = performance.now();
  for (const item of facts.items) {
    lines.push(proposeFor(item, facts.today, facts.settings));
    if (performance.now() - turn < TURN_MS) continue;
    await turnOfTheLoop();
    turn = performance.now();
  }
  return lines;
}

function rowOf({ item, input, order, sentence, answer, working, missing }: ProposedLine) {
  const { lots, onOrder, committed, toRefill } = input;
  return {
    itemId: item.itemId,
    makerId: item.makerId,
    mustHaveClass: item.mustHaveClass,
    proposed: order,
    packOf: item.packOf,
    unitPence: item.unitPence,
    onHand: lots.reduce((sum, { pieces }) => sum + pieces, 0),
    onOrder,
    committed,
    toRefill,
    sentence,
    input,
    answer,
    working,
    missing,
  };
}

/** Takes the place of a proposal nobody has decided on; its number, or none. */
async function supersede(write: Queries, now: string): Promise<string | null> {
  const [open] = await write.select().from(restocks).where(eq(restocks.state, 'proposed'));
  if (!open) return null;
  await write
    .update(restocks)
    .set({ state: 'superseded', decidedAt: now, revision: open.revision + 1 })
    .where(eq(restocks.id, open.id));
  return open.number;
}
