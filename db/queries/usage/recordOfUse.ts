import { asc, eq, inArray } from 'drizzle-orm';
import type { Plate } from '@/lib/catalogue/item';
import type { Construct } from '@/lib/plans/plan';
import { type UseAct, useAct } from '@/lib/usage/act';
import type { UseQuestion } from '@/lib/usage/questions';
import { mayRead, type Reading } from '../../reader';
import { loads, packs, people, useEntries } from '../../schema';
import { platesOf } from '../planner';
import { tableFacts } from './tableFacts';
import { itemsAtTable, type TableItem, tableItems } from './tableItems';
import type { TablePack } from './tablePacks';
import type { TableSet } from './tableSets';
import type { TableSlot } from './tableSlots';

/** An entry as people see it: whose it is, and the pack and load its piece was in. */
export interface ShownEntry {
  id: string;
  act: UseAct;
  doneAt: string;
  enteredAt: string;
  by: string;
  pack: PackAndLoad | null;
}

export interface PackAndLoad {
  number: string;
  /** `null`: its load is not on record. */
  load: string | null;
}

/** The record of use of one case, as its screen, its paper and its export have it. */
export interface RecordOfUse {
  caseDate: string;
  /** `null` until it is closed. */
  closed: { by: string; at: string; questions: UseQuestion[]; entries: number; digest: string } | null;
  entries: ShownEntry[];
  plan: { version: number; construct: Construct } | null;
  /** Plates of the plan, to draw. */
  plates: Plate[];
  sets: (TableSet & { pack: PackAndLoad | null })[];
  slots: TableSlot[];
  packs: TablePack[];
  countQuestions: { id: string; setId: string | null; lineId: string | null; thing: string }[];
  items: TableItem[];
}

/** The record of use of a case; `null` when there is no such case. */
export async function recordOfUse(db: Reading, caseId: string): Promise<RecordOfUse | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const facts = await tableFacts(read, caseId);
  if (!facts) return null;
  const rows = await read
    .select({ entry: useEntries, by: people.name })
    .from(useEntries)
    .innerJoin(people, eq(people.id, useEntries.personId))
    .where(eq(useEntries.caseId, caseId))
    .orderBy(asc(useEntries.doneAt), asc(useEntries.id));
  const packIds = [...rows.map(({ entry }) => entry.packId), ...facts.sets.map(({ packId }) => packId)];
  const [numbers, items, plates, closers] = await Promise.all([
    read
      .select({ id: packs.id, number: packs.number, load: loads.number })
      .from(packs)
      .leftJoin(loads, eq(loads.id, packs.loadId))
      .where(
        inArray(
          packs.id,
          packIds.flatMap((id) => id ?? []),
        ),
      ),
    tableItems(read, itemsAtTable(facts)),
    facts.plan ? platesOf(db, facts.plan.construct) : new Map<string, Plate>(),
    read
      .select({ name: people.name })
      .from(people)
      .where(eq(people.id, facts.use?.closedBy ?? '')),
  ]);
  const packOf = new Map(numbers.map(({ id, number, load }) => [id, { number, load }]));
  return {
    caseDate: facts.booked.caseDate,
    closed:
      facts.use?.closedAt == null
        ? null
        : {
            by: closers[0]?.name ?? '',
            at: facts.use.closedAt,
            questions: facts.use.questions as UseQuestion[],
            entries: facts.use.entryCount ?? 0,
            digest: facts.use.entryDigest ?? '',
          },
    entries: rows.map(({ entry, by }) => ({
      id: entry.id,
      act: useAct.parse(entry.act),
      doneAt: entry.doneAt,
      enteredAt: entry.enteredAt,
      by,
      pack: packOf.get(entry.packId ?? '') ?? null,
    })),
    plan: facts.plan,
    plates: [...plates.values()],
    sets: facts.sets.map((set) => ({ ...set, pack: packOf.get(set.packId ?? '') ?? null })),
    slots: facts.slots,
    packs: facts.packs,
    countQuestions: facts.countQuestions,
    items: [...items.values()],
  };
}
