import { asc, eq } from 'drizzle-orm';
import { type SupplyTerms, supplyTerms } from '@/lib/restock/terms';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { items, makers, people, supplyTermsRows } from '../../schema';

type TermsRow = typeof supplyTermsRows.$inferSelect;

const termsOf = ({
  leadDays,
  leadSdDays,
  reviewDays,
  servicePercent,
  shelfLifeDays,
  consigned,
}: TermsRow): SupplyTerms =>
  supplyTerms.parse({ leadDays, leadSdDays, reviewDays, servicePercent, shelfLifeDays, consigned });

/** Every term that is stated, by maker and by item. */
export async function loadTerms(
  read: Queries,
): Promise<{ ofMaker: Map<string, SupplyTerms>; ofItem: Map<string, SupplyTerms> }> {
  const rows = await read.select().from(supplyTermsRows);
  const by = (key: 'makerId' | 'itemId') =>
    new Map(
      rows.flatMap((row) => {
        const id = row[key];
        return id === null ? [] : [[id, termsOf(row)] as const];
      }),
    );
  return { ofMaker: by('makerId'), ofItem: by('itemId') };
}

/** Terms as the screen shows and changes them. */
export interface TermsOnScreen extends SupplyTerms {
  of: { kind: 'maker' | 'item'; id: string; name: string };
  /** 0 where nothing is stated yet. */
  revision: number;
  changedBy: string | null;
  changedAt: string | null;
}

const NOTHING_STATED: SupplyTerms = {
  leadDays: null,
  leadSdDays: null,
  reviewDays: null,
  servicePercent: null,
  shelfLifeDays: null,
  consigned: null,
};

/** Every maker, with terms or without, and every item that has terms of its own. */
export async function listTerms(db: Reading): Promise<TermsOnScreen[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [ofMakers, ofItems] = await Promise.all([
    read
      .select({ id: makers.id, name: makers.name, terms: supplyTermsRows, by: people.name })
      .from(makers)
      .leftJoin(supplyTermsRows, eq(supplyTermsRows.makerId, makers.id))
      .leftJoin(people, eq(people.id, supplyTermsRows.changedBy))
      .orderBy(asc(makers.name)),
    read
      .select({ id: items.id, code: items.code, name: items.name, terms: supplyTermsRows, by: people.name })
      .from(supplyTermsRows)
      .innerJoin(items, eq(items.id, supplyTermsRows.itemId))
      .leftJoin(people, eq(people.id, supplyTermsRows.changedBy))
      .orderBy(asc(items.code)),
  ]);
  const shown = (of: TermsOnScreen['of'], terms: TermsRow | null, by: string | null): TermsOnScreen => ({
    of,
    ...(terms ? termsOf(terms) : NOTHING_STATED),
    revision: terms?.revision ?? 0,
    changedBy: by,
    changedAt: terms?.changedAt ?? null,
  });
  return [
    ...ofMakers.map(({ id, name, terms, by }) => shown({ kind: 'maker', id, name }, terms, by)),
    ...ofItems.map(({ id, code, name, terms, by }) =>
      shown({ kind: 'item', id, name: `${code} ${name}` }, terms, by),
    ),
  ];
}
