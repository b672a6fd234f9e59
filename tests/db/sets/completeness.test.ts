import { and, eq, sql } from 'drizzle-orm';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Database, readAs } from '@/db/client';
import { keptCatalogue } from '@/db/queries/caseKit';
import { completenessOfSets } from '@/db/queries/completeness';
import { keptVersions } from '@/db/queries/keptVersions';
import { listPeople } from '@/db/queries/people';
import { loadSetSettings } from '@/db/queries/sets';
import { benchCounts, configurationLines, items, setContents, sets } from '@/db/schema';
import { completeness } from '@/lib/calculations/completeness/completeness';
import { configurationVersionId } from '@/lib/identity/ids';
import { completenessInputOf, type HeldLine } from '@/lib/sets/holdings';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

/** The plain calculation, from the rows themselves. */
async function plain(db: Database) {
  const [versions, catalogue, settings, rows, held] = await Promise.all([
    keptVersions(db),
    keptCatalogue(db),
    loadSetSettings(db),
    db.read.select().from(sets),
    db.read.select().from(setContents),
  ]);
  const byItem = new Map(catalogue.map((item) => [item.id, item]));
  return rows.map(({ id, versionId }) => {
    const version = versions.get(configurationVersionId.parse(versionId));
    const lines = (version?.lines ?? []).map((line): HeldLine => {
      const row = held.find((one) => one.setId === id && one.lineId === line.id);
      return { ...line, found: row?.found ?? null, unsound: row?.unsound ?? 0, condition: 'sound' };
    });
    const answer = completeness(completenessInputOf(lines, [], byItem, settings));
    const figures = answer.outcome === 'answered' ? answer.answer : answer.known;
    if (!figures) throw new Error('completeness always gives its figures');
    const short = (mustHaveClass: number) =>
      figures.shortLines.filter((line) => line.mustHaveClass === mustHaveClass).length;
    const stopped = (mustHaveClass: number) =>
      figures.mustHaves.lines.filter((one) => one.state === 'notMet' && one.mustHaveClass === mustHaveClass)
        .length;
    return {
      setId: id,
      pieces: figures.pieces,
      mustHaves: figures.mustHaves,
      uncounted: lines.filter(({ found }) => found === null).length,
      unsound: lines.reduce((sum, line) => sum + line.unsound, 0),
      shortLines: { 1: short(1), 2: short(2), 3: short(3), 4: short(4) },
      stopped: { 1: stopped(1), 2: stopped(2) },
    };
  });
}

const byId = <One extends { setId: string }>(all: readonly One[]) =>
  [...all].sort((a, b) => (a.setId < b.setId ? -1 : 1));

/** Rows of the kept figures that are not as worked out anew. */
const astray = (db: Database) =>
  db.read.all(sql`SELECT set_id, lines, expected, found, surplus, unsound, uncounted, musts, below, short_1, short_2, short_3,
    short_4 FROM set_completeness EXCEPT SELECT * FROM set_completeness_worked_out`);

describe('completeness of every set', () => {
  it('is the plain calculation for every set of the demo', async () => {
    const db = await demoDatabase();
    const all = await completenessOfSets(db);
    expect(byId(all)).toEqual(byId(await plain(db)));
    expect(all.some(({ mustHaves }) => mustHaves.lines.length > 0)).toBe(true);
    expect(all.some(({ mustHaves }) => mustHaves.lines.length === 0)).toBe(true);
    expect(astray(db)).toEqual([]);
  });

  it('stays so whatever is entered, changed, deleted or refitted, in any order', async () => {
    const db = await demoDatabase();
    const [someSets, lines] = await Promise.all([
      db.read.select({ id: sets.id, versionId: sets.versionId }).from(sets).limit(6),
      db.read
        .select({ id: configurationLines.id, versionId: configurationLines.versionId })
        .from(configurationLines),
    ]);
    const versionIds = [...new Set(someSets.map(({ versionId }) => versionId))];
    const followed = lines.filter(({ versionId }) => versionIds.includes(versionId));
    const change = fc.record({
      set: fc.constantFrom(...someSets.map(({ id }) => id)),
      line: fc.constantFrom(...followed.map(({ id }) => id)),
      version: fc.constantFrom(...versionIds),
      what: fc.constantFrom('enter', 'enter', 'enter', 'delete', 'empty', 'refit'),
      found: fc.nat(9),
      unsound: fc.nat(2),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 25 }), async (changes) => {
        await db.tx(async (write) => {
          for (const { set, line, version, what, found, unsound } of changes) {
            const there = and(eq(setContents.setId, set), eq(setContents.lineId, line));
            if (what === 'enter')
              await write
                .insert(setContents)
                .values({ setId: set, lineId: line, found, unsound, condition: 'sound' })
                .onConflictDoUpdate({
                  target: [setContents.setId, setContents.lineId],
                  set: { found, unsound },
                });
            else if (what === 'delete') await write.delete(setContents).where(there);
            else if (what === 'empty') await write.delete(setContents).where(eq(setContents.setId, set));
            else await write.update(sets).set({ versionId: version }).where(eq(sets.id, set));
          }
        });
        expect(astray(db)).toEqual([]);
        expect(byId(await completenessOfSets(db))).toEqual(byId(await plain(db)));
      }),
      { numRuns: 25, seed: 952 },
    );
  });

  it('is judged anew where an item is called something else, though nothing moved', async () => {
    const db = await demoDatabase();
    const before = await completenessOfSets(db);
    const named = before.flatMap(({ mustHaves }) => mustHaves.lines.map(({ item }) => item));
    const [code] = named;
    if (code === undefined) throw new Error('a must-have of the demo is not simply there');
    await db.tx((write) =>
      write
        .update(items)
        .set({ name: 'Called otherwise', revision: sql`revision + 1` })
        .where(eq(items.code, code)),
    );
    const after = await completenessOfSets(db);
    expect(byId(after)).toEqual(byId(await plain(db)));
    expect(after).not.toEqual(before);
  });

  it('takes nothing for kept that was taken back with its transaction', async () => {
    const db = await demoDatabase();
    const before = await completenessOfSets(db);
    await expect(
      db.tx(async (write) => {
        await write.update(setContents).set({ found: 0 });
        throw new Error('taken back');
      }),
    ).rejects.toThrow('taken back');
    expect(await completenessOfSets(db)).toEqual(before);
    await db.tx((write) => write.update(setContents).set({ found: 0 }));
    expect(byId(await completenessOfSets(db))).toEqual(byId(await plain(db)));
  });

  it('tells whoever checks a set blind nothing of it', async () => {
    const db = await demoDatabase();
    const [set] = await db.read.select().from(sets).where(eq(sets.step, 'onBench')).limit(1);
    const person = (await listPeople(db)).find(({ role }) => role === 'technician');
    if (!set?.turnId || !person) throw new Error('the demo has no set on the bench, or no technician');
    const { id: setId, turnId, versionId, revision: baseRevision } = set;
    const blind = { setId, turnId, versionId, baseRevision, personId: person.id, purpose: 'check' };
    await db.tx((write) =>
      write.insert(benchCounts).values({ id: 'count_blind', ...blind, beganAt: DEMO_NOW.toISOString() }),
    );
    const told = (await completenessOfSets(readAs(db, person))).find((one) => one.setId === setId);
    const lines = await db.read
      .select()
      .from(configurationLines)
      .where(eq(configurationLines.versionId, versionId));
    expect(told).toMatchObject({ uncounted: lines.length, unsound: 0, pieces: { found: 0, surplus: 0 } });
    expect(told?.mustHaves.lines.every(({ state }) => state === 'notCounted')).toBe(true);
  });
});
