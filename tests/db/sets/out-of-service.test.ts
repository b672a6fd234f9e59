import { and, eq, inArray, ne } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { loadSetStanding, loadSetStandings } from '@/db/queries/setStandings';
import { loadStore } from '@/db/queries/store';
import { cases, setContents, setPromises, sets, shortDecisions } from '@/db/schema';
import { demoDatabase } from '../../setup/database';

const now = '2026-01-14T08:00:00.000Z';

async function takeOut(db: Database, ids: string[]): Promise<void> {
  await db.tx(async (write) => {
    await write.update(sets).set({ step: 'held', heldBecause: 'recall' }).where(inArray(sets.id, ids));
    await write.update(sets).set({ withdrawnAt: now }).where(inArray(sets.id, ids));
  });
}

/** Lets every other set go short for a case that is nobody's here. */
async function sendElsewhere(db: Database, except: string): Promise<void> {
  const promised = db.read.select({ id: setPromises.caseId }).from(setPromises);
  const booked = await db.read.select().from(cases);
  const taken = new Set((await promised).map(({ id }) => id));
  const free = booked.find(({ id, endsAt }) => !taken.has(id) && endsAt > now);
  if (!free) throw new Error('the demo has a case to come that no set is promised to');
  const others = await db.read.select().from(sets).where(ne(sets.id, except));
  await db.tx(async (write) => {
    for (const { id, turnId } of others)
      if (turnId !== null)
        await write.insert(shortDecisions).values({
          id: `decision_${id.slice(4)}`,
          setId: id,
          turnId,
          kind: 'oneCase',
          lines: [],
          substitutes: [],
          reason: 'no other set is back before the case',
          caseId: free.id,
          approvals: [
            { as: 'operatingSurgeon', personId: free.surgeonId, name: 'Surgeon', method: 'pin', at: now },
          ],
          decidedAt: now,
          lapsesAt: free.endsAt,
          lapsedAt: null,
        });
  });
}

const casesOf = async (db: Database, id: string) => (await loadSetStanding(db, id, now))?.standing.cases;

/** A set some case of which depends on what stands beside it, how it stands then, and how it would with all others empty. */
async function leaning(db: Database) {
  const { sets: all } = await loadSetStandings(db, { now });
  const empty = await demoDatabase();
  for (const { set, standing } of all.filter((one) => one.standing.cases.length > 0)) {
    const before = await empty.read.select().from(setContents).where(ne(setContents.setId, set.id));
    await empty.tx((write) =>
      write.update(setContents).set({ found: 0 }).where(ne(setContents.setId, set.id)),
    );
    const alone = await casesOf(empty, set.id);
    if (JSON.stringify(alone) !== JSON.stringify(standing.cases)) return { id: set.id, alone };
    await empty.tx(async (write) => {
      for (const { setId, lineId, found } of before)
        await write
          .update(setContents)
          .set({ found })
          .where(and(eq(setContents.setId, setId), eq(setContents.lineId, lineId)));
    });
  }
  throw new Error('the demo has a case that needs a second set');
}

describe('a set out of service', () => {
  it('is in no store a kit is planned from', async () => {
    const db = await demoDatabase();
    const codes = async () => (await loadStore(db, null)).sets.map(({ code }) => code);
    const before = await codes();
    expect(before).toContain('SFS-09');
    await takeOut(db, ['set_sfs-09']);
    expect(await codes()).toEqual(before.filter((code) => code !== 'SFS-09'));
  });

  it('stands beside no other set for a case, were it promised to the same one', async () => {
    const db = await demoDatabase();
    const { id, alone } = await leaning(db);
    const others = (await db.read.select({ id: sets.id }).from(sets)).map((row) => row.id);
    await takeOut(
      db,
      others.filter((one) => one !== id),
    );
    expect(await casesOf(db, id)).toEqual(alone);
  });
});

it('a set that goes short for one case stands beside no set for another', async () => {
  const db = await demoDatabase();
  const { id, alone } = await leaning(db);
  await sendElsewhere(db, id);
  expect(await casesOf(db, id)).toEqual(alone);
});
