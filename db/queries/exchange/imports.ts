import { desc, eq, type SQL, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { z } from 'zod';
import type { ListKind } from '@/lib/exchange/list';
import { mayRead, type Reading } from '../../reader';
import { imports, people } from '../../schema';

/** A list that came in, for the screen. */
export interface ImportInList {
  id: string;
  list: ListKind;
  at: string;
  by: string;
  added: number;
  changed: number;
  unchanged: number;
  /** `null`: it stands. */
  takenBack: { at: string; by: string; left: { name: string; because: string }[] } | null;
}

const leftAsItIs = z.array(z.object({ name: z.string(), because: z.string() }));
const MOST = 100;

/** What came in, the newest first; of one kind of list where it is named. Only the newest hundred. */
export async function listImports(db: Reading, list: ListKind | null = null): Promise<ImportInList[]> {
  mayRead(db, 'readHospital');
  return importsWhere(db, list === null ? undefined : eq(imports.list, list), MOST);
}

/** As `listImports`, those before one of them. */
export async function importsAfter(
  db: Reading,
  { after, limit }: { after: { at: string; id: string } | null; limit: number },
): Promise<ImportInList[]> {
  mayRead(db, 'readHospital');
  const where =
    after === null ? undefined : sql`(${imports.broughtInAt}, ${imports.id}) < (${after.at}, ${after.id})`;
  return importsWhere(db, where, limit);
}

/** One list that came in; `null` where there is none of that id. */
export async function findImport(db: Reading, id: string): Promise<ImportInList | null> {
  mayRead(db, 'readHospital');
  return (await importsWhere(db, eq(imports.id, id), 1))[0] ?? null;
}

async function importsWhere(db: Reading, where: SQL | undefined, limit: number): Promise<ImportInList[]> {
  const back = alias(people, 'back');
  const rows = await db.read
    .select({ row: imports, by: people.name, backBy: back.name })
    .from(imports)
    .innerJoin(people, eq(people.id, imports.broughtInBy))
    .leftJoin(back, eq(back.id, imports.takenBackBy))
    .where(where)
    .orderBy(desc(imports.broughtInAt), desc(imports.id))
    .limit(limit);
  return rows.map(({ row, by, backBy }) => ({
    id: row.id,
    list: row.list as ListKind,
    at: row.broughtInAt,
    by,
    added: row.added,
    changed: row.changed,
    unchanged: row.unchanged,
    takenBack:
      row.takenBackAt === null
        ? null
        : { at: row.takenBackAt, by: backBy ?? '', left: leftAsItIs.parse(row.leftAsItIs) },
  }));
}
