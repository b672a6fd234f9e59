import { and, asc, eq, inArray } from 'drizzle-orm';
import type { FitException } from '@/lib/fit/rule';
import { mayRead, type Reading } from '../reader';
import { items, ledger, people } from '../schema';
import { listFitExceptions } from './fitRules';

/** An exception with the two designs it names. */
export interface ListedException {
  exception: FitException;
  first: { code: string; name: string };
  second: { code: string; name: string };
}

/** Every named exception with its two items' codes and names. */
export async function exceptionList(db: Reading): Promise<ListedException[]> {
  mayRead(db, 'readHospital');
  const exceptions = await listFitExceptions(db);
  if (exceptions.length === 0) return [];
  const ids = [...new Set(exceptions.flatMap((one) => [one.firstItemId, one.secondItemId]))];
  const rows = await db.read
    .select({ id: items.id, code: items.code, name: items.name })
    .from(items)
    .where(inArray(items.id, ids));
  const byId = new Map(rows.map((row) => [row.id, row]));
  const named = (id: string) => byId.get(id) ?? { code: id, name: 'an item that is gone' };
  return exceptions.map((exception) => ({
    exception,
    first: named(exception.firstItemId),
    second: named(exception.secondItemId),
  }));
}

/** One thing done to a rule or exception, for its history. */
export interface FitHistoryEntry {
  seq: number;
  doneAt: string;
  person: string | null;
  action: string;
  subjectId: string;
  detail: Record<string, unknown>;
}

/** What the ledger says of these rules or exceptions, oldest first. */
export async function fitHistory(
  db: Reading,
  kind: 'fit-rule' | 'fit-exception',
  ids: readonly string[],
): Promise<FitHistoryEntry[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  if (ids.length === 0) return [];
  const rows = await read
    .select({
      seq: ledger.seq,
      doneAt: ledger.doneAt,
      person: people.name,
      action: ledger.action,
      subjectId: ledger.subjectId,
      detail: ledger.detail,
    })
    .from(ledger)
    .leftJoin(people, eq(people.id, ledger.personId))
    .where(and(eq(ledger.subjectKind, kind), inArray(ledger.subjectId, [...ids])))
    .orderBy(asc(ledger.seq));
  return rows.map((row) => ({ ...row, detail: row.detail as Record<string, unknown> }));
}
