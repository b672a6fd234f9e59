import { eq, or, sql } from 'drizzle-orm';
import type { AnySQLiteColumn } from 'drizzle-orm/sqlite-core';
import { mayRead, type Reading } from '../../reader';
import { cases, loads, loans, packs, sets, sterilisers } from '../../schema';

export interface NamedThing {
  id: string;
  kind: 'set' | 'case' | 'load' | 'pack' | 'steriliser' | 'loan';
  label: string;
}

/** The thing that is called `text` (a set's code, a case's reference, a load's, pack's or loan's number, a steriliser's name) or has it as its id. */
export async function thingNamed(db: Reading, text: string): Promise<NamedThing | null> {
  mayRead(db, 'readLedger');
  const { read } = db;
  const is = (id: AnySQLiteColumn, name: AnySQLiteColumn) =>
    or(eq(id, text), sql`${name} = ${text} COLLATE NOCASE`);
  // of these there are as many as there were days: they are written in capitals, and so found by the index of their names
  const isInCapitals = (id: AnySQLiteColumn, name: AnySQLiteColumn) =>
    or(eq(id, text), eq(name, text), eq(name, text.toUpperCase()));
  const [set] = await read
    .select({ id: sets.id, label: sets.code })
    .from(sets)
    .where(is(sets.id, sets.code))
    .limit(1);
  if (set) return { ...set, kind: 'set' };
  const [booked] = await read
    .select({ id: cases.id, label: cases.reference })
    .from(cases)
    .where(isInCapitals(cases.id, cases.reference))
    .limit(1);
  if (booked) return { ...booked, kind: 'case' };
  const [load] = await read
    .select({ id: loads.id, label: loads.number })
    .from(loads)
    .where(isInCapitals(loads.id, loads.number))
    .limit(1);
  if (load) return { ...load, kind: 'load' };
  const [pack] = await read
    .select({ id: packs.id, label: packs.number })
    .from(packs)
    .where(isInCapitals(packs.id, packs.number))
    .limit(1);
  if (pack) return { ...pack, kind: 'pack' };
  const [steriliser] = await read
    .select({ id: sterilisers.id, label: sterilisers.name })
    .from(sterilisers)
    .where(is(sterilisers.id, sterilisers.name))
    .limit(1);
  if (steriliser) return { ...steriliser, kind: 'steriliser' };
  const [loan] = await read
    .select({ id: loans.id, label: loans.number })
    .from(loans)
    .where(is(loans.id, loans.number))
    .limit(1);
  return loan ? { ...loan, kind: 'loan' } : null;
}
