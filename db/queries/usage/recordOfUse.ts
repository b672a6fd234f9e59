import { asc, eq, inArray } from 'drizzle-orm';
import type { Plate } from '@/lib/catalogue/item';
import type { Construct } from '@/lib/plans/plan';
import type { Reason } from '@/lib/reasons/reason';
import { type UseAct, useAct } from '@/lib/usage/act';
import type { UseQuestion } from '@/lib/usage/questions';
import { mayRead, type Reading } from '../../reader';
import { loads, packs, people, sets, useEntries } from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { platesOf } from '../planner';
import { tableFacts } from './tableFacts';
import { itemsAtTable, type TableItem, tableItems } from './tableItems';
import type { TablePack } from './tablePacks';
import type { TableSet } from './tableSets';
import type { TableSlot } from './tableSlots';
import { unseenBy } from './unseen';

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
  /** The hospital's own reasons, retired ones too. */
  reasons: Reason[];
  /** Whether it asks why something was wasted. */
  asksReason: boolean;
  /** Sets at the table that the reader counts blind: nothing of them is here until they have closed their count. */
  hidden: TableSet[];
  /** Names of sets that delays were about, by id; those of items stand among `items`. */
  aboutSets: { id: string; code: string }[];
}

/** The record of use of a case; `null` when there is no such case. */
export async function recordOfUse(db: Reading, caseId: string): Promise<RecordOfUse | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [whole, blind] = await Promise.all([tableFacts(read, caseId), hiddenFrom(db)]);
  if (!whole) return null;
  const facts = unseenBy(whole, blind);
  const shown = new Set(facts.entries.map(({ id }) => id));
  const all = await read
    .select({ entry: useEntries, by: people.name })
    .from(useEntries)
    .innerJoin(people, eq(people.id, useEntries.personId))
    .where(eq(useEntries.caseId, caseId))
    .orderBy(asc(useEntries.doneAt), asc(useEntries.id));
  const rows = all.filter(({ entry }) => shown.has(entry.id));
  const packIds = [...rows.map(({ entry }) => entry.packId), ...facts.sets.map(({ packId }) => packId)];
  const about = facts.entries.flatMap(({ act }) => (act.kind === 'delay' && act.about ? [act.about] : []));
  const [numbers, items, plates, closers, aboutSets] = await Promise.all([
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
    tableItems(read, [
      ...itemsAtTable(facts),
      ...about.flatMap((one) => (one.kind === 'item' ? [one.itemId as string] : [])),
    ]),
    facts.plan ? platesOf(db, facts.plan.construct) : new Map<string, Plate>(),
    read
      .select({ name: people.name })
      .from(people)
      .where(eq(people.id, facts.use?.closedBy ?? '')),
    read
      .select({ id: sets.id, code: sets.code })
      .from(sets)
      .where(
        inArray(
          sets.id,
          about.flatMap((one) => (one.kind === 'set' ? [one.setId as string] : [])),
        ),
      ),
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
    reasons: facts.reasons,
    asksReason: facts.asksReason,
    hidden: facts.sets.filter(({ id }) => blind.has(id)),
    aboutSets,
  };
}
