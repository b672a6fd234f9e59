import { and, eq, ne, sql } from 'drizzle-orm';
import type { Problem } from '@/lib/identity/result';
import type { Queries } from '../client';
import { items, makers } from '../schema';

/** What an item may not share with another, asked inside the transaction that writes it. */

export async function findRow(write: Queries, id: string) {
  const [row] = await write.select().from(items).where(eq(items.id, id));
  return row ?? null;
}

export async function findMaker(write: Queries, id: string): Promise<{ id: string; name: string } | null> {
  const [row] = await write.select().from(makers).where(eq(makers.id, id));
  return row ?? null;
}

/** A code or GTIN that another item has already, each with the item's name. */
export async function takenProblems(
  write: Queries,
  { id, code, gtin }: { id: string; code: string; gtin: string | null },
): Promise<Problem[]> {
  const problems: Problem[] = [];
  const named = { name: items.name, code: items.code };
  if (code !== '') {
    const [other] = await write
      .select(named)
      .from(items)
      .where(and(sql`${items.code} = ${code} COLLATE NOCASE`, ne(items.id, id)));
    if (other) {
      problems.push({
        path: ['code'],
        code: 'code-taken',
        message: `${other.name} already has the code ${other.code}: choose another.`,
      });
    }
  }
  if (gtin !== null) {
    const [other] = await write
      .select(named)
      .from(items)
      .where(and(eq(items.gtin, gtin), ne(items.id, id)));
    if (other) {
      problems.push({
        path: ['gtin'],
        code: 'gtin-taken',
        message: `${other.code} (${other.name}) already has this GTIN.`,
      });
    }
  }
  return problems;
}
