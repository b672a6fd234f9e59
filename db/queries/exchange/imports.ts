import { desc, eq } from 'drizzle-orm';
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
  const back = alias(people, 'back');
  const rows = await db.read
    .select({ row: imports, by: people.name, backBy: back.name })
    .from(imports)
    .innerJoin(people, eq(people.id, imports.broughtInBy))
    .leftJoin(back, eq(back.id, imports.takenBackBy))
    .where(list === null ? undefined : eq(imports.list, list))
    .orderBy(desc(imports.broughtInAt))
    .limit(MOST);
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
