import { and, eq } from 'drizzle-orm';
import type { Database } from '@/db/client';
import { keptCatalogue } from '@/db/queries/caseKit';
import { listPeople, type Person } from '@/db/queries/people';
import { heldLines } from '@/db/queries/short/facts';
import { THE_PROGRAM } from '@/db/reader';
import { benchCounts, countLines, counts, setContents, setForeignPieces, sets, settings } from '@/db/schema';
import type { NewId } from '@/lib/identity/ids';
import type { Attestation, Meaning } from '@/lib/people/attestation';
import { demoDatabase } from '../../setup/database';

/** Half an hour after the demo was loaded. */
export const NOW = '2026-01-14T07:00:00.000Z';

export function counterOfIds(): NewId {
  let made = 0;
  return (prefix) => {
    made += 1;
    return `${prefix}_made-${made}`;
  };
}

/** The demo hospital with its people by name, where one person's count is enough to pack. */
export async function benchHospital() {
  const db = await demoDatabase();
  await db.tx((write) => write.insert(settings).values({ key: 'bench', value: { secondCheck: 'never' } }));
  const people = await listPeople(db);
  const person = (name: string): Person => {
    const found = people.find((one) => one.name === name);
    if (!found) throw new Error(`the demo has no ${name}`);
    return found;
  };
  return {
    db,
    technician: person('Wren Adeyemi'),
    other: person('Tomas Birkett'),
    lead: person('Maurice Oduya'),
    theatreLead: person('Gwen Sallis'),
    surgeon: person('Ines Halloran'),
    otherSurgeon: person('Tobias Wray'),
  };
}

export const attested = (person: Person, meaning: Meaning, at = NOW): Attestation => ({
  personId: person.id,
  meaning,
  method: 'pin',
  at,
});

export async function setRow(db: Database, code: string) {
  const [row] = await db.read.select().from(sets).where(eq(sets.code, code));
  if (!row) throw new Error(`the demo has no ${code}`);
  return row;
}

let counted = 0;

/**
 * Counts a set whole at the bench, by item code where it holds other than expected; foreign pieces found their home.
 * What `db/operations/bench` writes for a closed count, without entering it piece by piece.
 */
export async function countWhole(
  db: Database,
  code: string,
  found: Record<string, number>,
  { by, at = '2026-01-14T06:50:00.000Z' }: { by: Person; at?: string },
): Promise<void> {
  const set = await setRow(db, code);
  const codes = new Map(
    (await keptCatalogue({ read: db.read, reader: THE_PROGRAM })).map((item) => [item.id, item.code]),
  );
  const lines = await heldLines(db.read, set);
  counted += 1;
  const countId = `count_whole-${counted}`;
  if (set.turnId === null) throw new Error(`${code} is in no turn`);
  const turnId = set.turnId;
  await db.tx(async (write) => {
    const head = { id: countId, setId: set.id, versionId: set.versionId, baseRevision: set.revision };
    await write.insert(counts).values({ ...head, countedBy: by.id, countedAt: at });
    await write.insert(benchCounts).values({
      ...head,
      turnId,
      purpose: 'count',
      personId: by.id,
      beganAt: at,
      closedAt: at,
      entryCount: lines.length,
      entryDigest: '0'.repeat(64),
    });
    const rows = lines.map((line) => ({
      lineId: line.id,
      expected: line.expected,
      found: found[codes.get(line.itemId) ?? ''] ?? line.expected,
      unsound: 0,
      condition: 'sound',
    }));
    await write.insert(countLines).values(rows.map((row) => ({ ...row, countId })));
    for (const { expected: _expected, ...row } of rows)
      await write
        .insert(setContents)
        .values({ ...row, setId: set.id })
        .onConflictDoUpdate({ target: [setContents.setId, setContents.lineId], set: row });
    await write.delete(setForeignPieces).where(eq(setForeignPieces.setId, set.id));
    await write
      .update(sets)
      .set({ revision: set.revision + 1 })
      .where(and(eq(sets.id, set.id), eq(sets.revision, set.revision)));
  });
}
