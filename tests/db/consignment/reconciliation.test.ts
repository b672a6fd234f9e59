import { eq, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { closeReconciliation } from '@/db/operations/consignment/close-reconciliation';
import { enterReconciliation } from '@/db/operations/consignment/enter-reconciliation';
import { explainDifference } from '@/db/operations/consignment/explain-difference';
import { findReconciliation, listReconciliations } from '@/db/queries/consignment/reconciliations';
import type { Person } from '@/db/queries/people';
import { THE_PROGRAM } from '@/db/reader';
import { items, reconciliationLines, reconciliations, stock } from '@/db/schema';
import { reconciliationId } from '@/lib/identity/ids';
import { codesOf, done } from '../stock/shelf';
import { Consigned, ITEM, OWNER } from './consigned';

const because = 'Their van driver took one back without a note.';

async function opened(pieces = 6) {
  const at = await Consigned.open(pieces);
  const reading = { read: at.db.read, reader: THE_PROGRAM } as const;
  const [item] = await at.db.read.select({ code: items.code }).from(items).where(eq(items.id, ITEM));
  const code = item?.code ?? '';
  // of everything else of theirs the list says what the record says
  const others = at.db.read
    .all<{ code: string; lot: string; pieces: number }>(sql`
      SELECT items.code, stock.lot, sum(stock.quantity) AS pieces FROM stock JOIN items ON items.id = stock.item_id
      WHERE stock.lender_id = ${OWNER} AND stock.id <> ${at.heap} GROUP BY 1, 2 HAVING pieces > 0`)
    .map((row) => `${row.code};${row.lot};${row.pieces}`);
  const text = (said: number | string) =>
    ['code;lot;quantity', ...others, `${code};CONS-1;${said}`].join('\n');
  const enter = (of: {
    said: number | string;
    listedOn?: string;
    how?: string;
    id?: string;
    person?: Person;
  }) =>
    enterReconciliation({
      db: at.db,
      now: at.shelf.now(),
      newId: at.shelf.newId,
      person: of.person ?? at.shelf.keeper,
      entry: {
        id: of.id ?? at.shelf.newId('reconciliation'),
        lenderId: OWNER,
        how: of.how ?? 'list',
        listedOn: of.listedOn ?? '2026-01-14',
        text: text(of.said),
      },
    });
  const record = async (id: string) => {
    const found = await findReconciliation(reading, id);
    if (!found) throw new Error(`there is no ${id}`);
    return found;
  };
  const lineOf = async (id: string) => {
    const line = (await record(id)).lines.find(({ lot }) => lot === 'CONS-1');
    if (!line) throw new Error('it has the lot');
    return line;
  };
  const asked = async (id: string, person = at.shelf.keeper) => ({
    db: at.db,
    now: at.shelf.now(),
    person,
    reconciliationId: reconciliationId.parse(id),
    baseRevision: (await record(id)).revision,
  });
  const close = async (id: string, second: Person | null = null, first = at.shelf.keeper) => {
    const request = await asked(id, first);
    const proof = (person: Person) => at.shelf.proof(person, 'iCloseThisReconciliation', request.now);
    return closeReconciliation({
      ...request,
      attestation: proof(first),
      second: second && { person: second, attestation: proof(second) },
    });
  };
  return { at, reading, enter, record, lineOf, asked, close };
}

describe('a reconciliation with an owner', () => {
  it('that agrees is closed by one person and then stays', async () => {
    const { at, enter, record, close, reading } = await opened();
    const { id, number } = done(await enter({ said: 6 }));
    expect(number).toBe('RL-0001');
    const found = await record(id);
    expect(found.lines.every(({ difference, unexplained }) => difference === 0 && unexplained === 0)).toBe(
      true,
    );
    expect(found.lines.length).toBeGreaterThan(1);
    done(await close(id));
    expect(await record(id)).toMatchObject({ closedWith: null, revision: 2 });
    expect(codesOf(await close(id))).toEqual(['frozen']);
    expect(await listReconciliations(reading, OWNER)).toMatchObject([{ id, unexplained: 0 }]);
    await expect(
      at.db.tx(async (write) => void (await write.update(reconciliations).set({ listedOn: '2020-01-01' }))),
    ).rejects.toThrow('never changes');
  });

  it('explains what was used and not told, what is on an order not sent, and what went back or came since', async () => {
    const { at, enter, lineOf } = await opened(10);
    await at.adjust('damaged', 2);
    expect(await lineOf(done(await enter({ said: 10 })).id)).toMatchObject({
      onShelf: 8,
      difference: 2,
      explained: [{ kind: 'usedNotTold', pieces: 2 }],
      unexplained: 0,
    });
    const order = await at.approved();
    expect(await lineOf(done(await enter({ said: 10 })).id)).toMatchObject({
      explained: [{ kind: 'orderNotSent', pieces: 2 }],
      unexplained: 0,
    });
    await at.send(order);
    // a list of the day before knows nothing of an order that was sent today; one of today should
    expect(await lineOf(done(await enter({ said: 10 })).id)).toMatchObject({ explained: [], unexplained: 2 });
    await at.adjust('sentBack', 1);
    expect(await lineOf(done(await enter({ said: 0, listedOn: '2026-01-13' })).id)).toMatchObject({
      onShelf: 7,
      difference: -7,
      explained: [
        { kind: 'orderSentLater', pieces: 2 },
        { kind: 'sentBackLater', pieces: 1 },
        { kind: 'receivedLater', pieces: -10 },
      ],
      unexplained: 0,
    });
  });

  it('with a difference nothing explains is closed by two, with its reason', async () => {
    const { at, enter, lineOf, asked, close } = await opened();
    const { manager, keeper, lead } = at.shelf;
    const { id } = done(await enter({ said: 7 }));
    const line = await lineOf(id);
    expect(line).toMatchObject({ difference: 1, unexplained: 1, because: null });
    expect(codesOf(await close(id, manager))).toEqual(['frozen']);
    const explain = async (more: object = {}, person = keeper) =>
      explainDifference({ ...(await asked(id, person)), lineId: line.id, because, ...more });
    expect(codesOf(await explain({}, lead))).toEqual(['not-permitted']);
    const stale = await asked(id);
    done(await explain());
    expect(codesOf(await explainDifference({ ...stale, lineId: line.id, because }))).toEqual(['conflict']);
    expect(codesOf(await close(id))).toEqual(['frozen']);
    expect(codesOf(await close(id, keeper))).toEqual(['not-permitted']);
    expect(codesOf(await close(id, lead))).toEqual(['not-permitted']);
    done(await close(id, manager));
    // the shelf is as it was: a count corrects it, not this
    expect(await at.shelf.quantity(at.heap)).toBe(6);
    for (const change of [{ because: 'Another.' }, { unexplained: 0 }])
      await expect(
        at.db.tx(
          async (write) =>
            void (await write
              .update(reconciliationLines)
              .set(change)
              .where(eq(reconciliationLines.id, line.id))),
        ),
      ).rejects.toThrow();
  });

  it('is guarded by the database: nothing unexplained is closed by one, or without a reason', async () => {
    const { at, enter } = await opened();
    const { id } = done(await enter({ said: 7 }));
    const closed = { closedAt: at.shelf.now(), closedBy: at.shelf.keeper.id };
    for (const change of [closed, { ...closed, closedWith: at.shelf.manager.id }])
      await expect(
        at.db.tx(
          async (write) =>
            void (await write.update(reconciliations).set(change).where(eq(reconciliations.id, id))),
        ),
      ).rejects.toThrow('has a reason');
  });

  it('is entered whole or not at all, once, by who may', async () => {
    const { at, enter, reading } = await opened();
    const refusedFor = async (of: Parameters<typeof enter>[0]) => {
      const outcome = await enter(of);
      return outcome.ok ? [] : outcome.refusal.problems.map(({ path }) => path.join('.'));
    };
    expect(await refusedFor({ said: 'many' })).toEqual([expect.stringMatching(/^text\.\d+\.pieces$/)]);
    expect(await refusedFor({ said: 6, listedOn: '2026-02-01' })).toEqual(['listedOn']);
    expect(await refusedFor({ said: 6, how: 'guess' })).toEqual(['how']);
    expect(codesOf(await enter({ said: 6, person: at.shelf.lead }))).toEqual(['not-permitted']);
    expect(await listReconciliations(reading, OWNER)).toEqual([]);
    const id = at.shelf.newId('reconciliation');
    const both = await Promise.all([enter({ said: 6, id }), enter({ said: 6, id })]);
    expect(both.map((one) => done(one).number)).toEqual(['RL-0001', 'RL-0001']);
    expect(codesOf(await enter({ said: 6, id, person: at.shelf.manager }))).toEqual(['conflict']);
  });

  it('by a count here asks of the shelf alone', async () => {
    const { at, enter, lineOf } = await opened();
    await at.adjust('damaged', 1);
    expect(await lineOf(done(await enter({ said: 5, how: 'count' })).id)).toMatchObject({
      difference: 0,
      unexplained: 0,
    });
    await at.db.tx(async (write) => {
      await write.update(stock).set({ lenderId: null }).where(eq(stock.id, at.heap));
    });
    // of nobody's stated stock the owner's record knows nothing
    expect(await lineOf(done(await enter({ said: 5, how: 'count' })).id)).toMatchObject({
      onShelf: 0,
      difference: 5,
    });
  });
});
