import { and, asc, eq } from 'drizzle-orm';
import { expect } from 'vitest';
import { beginWash } from '@/db/operations/turns/begin-wash';
import { endWash } from '@/db/operations/turns/end-wash';
import { receiveSet } from '@/db/operations/turns/receive-set';
import { closeUse } from '@/db/operations/usage/close-use';
import { recordUseEntry } from '@/db/operations/usage/record-use-entry';
import { findSet } from '@/db/queries/sets';
import { subjectOf, type TableFacts, tableFacts } from '@/db/queries/usage/tableFacts';
import { itemsAtTable, tableItems } from '@/db/queries/usage/tableItems';
import { caseReturns, pieceMoves, setContents, slotHoldings } from '@/db/schema';
import { setId } from '@/lib/identity/ids';
import type { PieceAct, UseAct, UseOutcome } from '@/lib/usage/act';
import { questionText } from '@/lib/usage/questions';
import { reckonUse } from '@/lib/usage/reckon';
import { demoDatabase } from '../../setup/database';
import { begin, close, countAll } from '../bench/counting';
import { KitDesk, saidOf, setThing, stockThing } from '../caseLife/kitDesk';

/** Tomorrow's distal radius: a set, a screw in a sterile pack and a wire in a pouch. */
const RADIUS = 'LM-26-9RTB';
const SCREW = 'stock_demo-063';
const WIRE = 'stock_demo-021';

/** The table of one case, with its kit issued and taken over. */
export class UsageDesk extends KitDesk {
  async facts(): Promise<TableFacts> {
    const facts = await tableFacts(this.db.read, this.caseId);
    if (!facts) throw new Error('there is no such case');
    return facts;
  }

  async reckoned() {
    const facts = await this.facts();
    const items = await tableItems(this.db.read, itemsAtTable(facts));
    return reckonUse(subjectOf(facts), facts.entries, (id) => items.get(id) ?? null);
  }

  /** Enters an act; answers its id with what came of it. */
  async enter(act: UseAct, { name = 'ruth-okonjo', id = this.newId('entry') } = {}) {
    const at = this.now();
    const outcome = await recordUseEntry({
      db: this.db,
      now: at,
      newId: this.newId,
      person: await this.person(name),
      sessionId: null,
      caseId: this.caseId,
      entry: { id, act, scanId: null, doneAt: at },
    });
    return { id, outcome };
  }

  async entered(act: UseAct): Promise<string> {
    const { id, outcome } = await this.enter(act);
    expect(saidOf(outcome)).toEqual([]);
    return id;
  }

  takenBack(entryId: string, because: string | null = null): UseAct {
    return { kind: 'takenBack', entryId, because } as UseAct;
  }

  async close({
    name = 'ruth-okonjo',
    entryIds = null as string[] | null,
    questions = null as string[] | null,
  } = {}) {
    const [person, at, facts] = [await this.person(name), this.now(), await this.facts()];
    const open = (await this.reckoned()).questions.map(questionText);
    return closeUse({
      db: this.db,
      now: at,
      newId: this.newId,
      person,
      caseId: this.caseId,
      entryIds: entryIds ?? facts.entries.map(({ id }) => id),
      questions: questions ?? open,
      attestation: this.proof(person, 'iRecordedThis', at),
    });
  }

  /** A slot of screws that holds at least so many. */
  async slot(least = 2) {
    const { slots } = await this.facts();
    const items = await tableItems(
      this.db.read,
      slots.map(({ itemId }) => itemId),
    );
    const slot = slots.find(
      ({ recorded, itemId }) => (recorded ?? 0) >= least && items.get(itemId)?.kind === 'screw',
    );
    if (!slot) throw new Error('no slot holds as many');
    return slot;
  }

  async pack(stockId: string) {
    const pick = (await this.kit()).picks.find((one) => one.stockId === stockId);
    const pack = (await this.facts()).packs.find(({ pickId }) => pickId === pick?.id);
    if (!pack) throw new Error(`${stockId} is not at the table`);
    return pack;
  }

  /** The set comes back, is washed, and is counted at the bench: as expected, but for the lines named. */
  async countAtBench(code: string, but: Record<string, number>) {
    const { db, newId } = this;
    const person = await this.person('wren-adeyemi');
    const step = async () => {
      const { id, revision } = await this.set(code);
      return { db, now: this.now(), newId, person, setId: setId.parse(id), baseRevision: revision };
    };
    for (const act of [receiveSet, beginWash] as const)
      expect(saidOf((await act(await step())) as never)).toEqual([]);
    expect(saidOf((await endWash({ ...(await step()), seen: 'clean' })) as never)).toEqual([]);
    const set = await findSet(db, (await this.set(code)).id);
    if (!set) throw new Error(`there is no ${code}`);
    const countId = await begin({ db, set }, person);
    expect((await close(db, person, countId, await countAll({ db, set }, person, countId, but))).ok).toBe(
      true,
    );
    return countId;
  }

  async found({ setId, lineId }: { setId: string; lineId: string }) {
    const [row] = await this.db.read
      .select()
      .from(setContents)
      .where(and(eq(setContents.setId, setId), eq(setContents.lineId, lineId)));
    const [holding] = await this.db.read
      .select()
      .from(slotHoldings)
      .where(and(eq(slotHoldings.setId, setId), eq(slotHoldings.lineId, lineId)));
    return { found: row?.found ?? null, holding: holding?.quantity ?? null };
  }

  moves(source: string) {
    return this.db.read
      .select()
      .from(pieceMoves)
      .where(eq(pieceMoves.source, source))
      .orderBy(asc(pieceMoves.seq));
  }

  returns(pickId: string) {
    return this.db.read.select().from(caseReturns).where(eq(caseReturns.pickId, pickId));
  }
}

export const fromSlot = (
  { setId, lineId, itemId }: { setId: string; lineId: string; itemId: string },
  outcome: UseOutcome = 'implanted',
  more: Partial<PieceAct> = {},
): PieceAct =>
  ({
    kind: 'piece',
    source: { kind: 'slot', setId, lineId },
    itemId,
    quantity: 1,
    outcome,
    lostAt: outcome === 'notFound' ? 'during' : null,
    place: null,
    lot: { kind: 'setAndLoad' },
    despite: [],
    note: null,
    because: null,
    ...more,
  }) as PieceAct;

export const fromPack = (
  { pickId, itemId }: { pickId: string; itemId: string },
  outcome: UseOutcome = 'implanted',
  more: Partial<PieceAct> & { returnId?: string | null } = {},
): PieceAct => {
  const { returnId = null, ...rest } = more;
  return {
    ...fromSlot({ setId: 'set_x', lineId: 'line_x', itemId }, outcome),
    source: { kind: 'pack', pickId, returnId },
    lot: { kind: 'asIssued' },
    ...rest,
  } as PieceAct;
};

/** The distal radius with its kit in theatre. */
export async function atTable(): Promise<UsageDesk> {
  const desk = new UsageDesk(await demoDatabase(), RADIUS);
  const whole = [{ thing: setThing('DRT-01') }, { thing: stockThing(SCREW) }, { thing: stockThing(WIRE) }];
  expect(saidOf(await desk.makeList())).toEqual([]);
  for (const { thing } of whole) expect(saidOf(await desk.pick(thing))).toEqual([]);
  expect(saidOf(await desk.finish())).toEqual([]);
  expect((await desk.check(whole)).ok).toBe(true);
  expect(saidOf(await desk.issue())).toEqual([]);
  expect(saidOf(await desk.take())).toEqual([]);
  return desk;
}

export { SCREW, WIRE };
