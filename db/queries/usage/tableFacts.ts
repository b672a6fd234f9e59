import { and, asc, eq, isNull } from 'drizzle-orm';
import { z } from 'zod';
import { type Construct, construct } from '@/lib/plans/plan';
import type { Reason } from '@/lib/reasons/reason';
import { theatreStateOf } from '@/lib/theatreCounts/state';
import { type UseEntry, useAct } from '@/lib/usage/act';
import type { UseSubject } from '@/lib/usage/reckon';
import type { Queries } from '../../client';
import { cases, caseUses, plans, theatreQuestions, useEntries } from '../../schema';
import { reasonsOf } from '../reasons/reasons';
import { readSetting } from '../settings';
import { lastClosed, theatreEntriesOf } from '../theatreCounts/counted';
import { packsAtTable, type TablePack } from './tablePacks';
import { setsAtTable, type TableSet } from './tableSets';
import { slotsAtTable, type TableSlot } from './tableSlots';

export type UseRow = typeof caseUses.$inferSelect;

/** Everything a record of use is worked out from. */
export interface TableFacts {
  booked: typeof cases.$inferSelect;
  use: UseRow | null;
  entries: UseEntry[];
  plan: { version: number; construct: Construct } | null;
  sets: TableSet[];
  slots: TableSlot[];
  packs: TablePack[];
  countQuestions: { id: string; setId: string | null; lineId: string | null; thing: string }[];
  /** The hospital's own reasons, retired ones too. */
  reasons: Reason[];
  /** Whether it asks why something was wasted. */
  asksReason: boolean;
}

const recordedBySlot = z.record(z.string(), z.number().int().nullable());

/** The table of one case as it is on record, inside or outside a write; `null` when there is no such case. */
export async function tableFacts(read: Queries, caseId: string): Promise<TableFacts | null> {
  const [booked] = await read.select().from(cases).where(eq(cases.id, caseId));
  if (!booked) return null;
  const [[use], entries, [plan], own, issuedPacks, final, countQuestions, reasons, asks] = await Promise.all([
    read.select().from(caseUses).where(eq(caseUses.caseId, caseId)),
    entriesOfUse(read, caseId),
    read
      .select()
      .from(plans)
      .where(and(eq(plans.caseId, caseId), eq(plans.status, 'confirmed'))),
    setsAtTable(read, caseId),
    packsAtTable(read, caseId),
    lastClosed(read, caseId, 'final'),
    read
      .select({
        id: theatreQuestions.id,
        setId: theatreQuestions.setId,
        lineId: theatreQuestions.lineId,
        thing: theatreQuestions.thing,
      })
      .from(theatreQuestions)
      .where(and(eq(theatreQuestions.caseId, caseId), isNull(theatreQuestions.settledAt)))
      .orderBy(asc(theatreQuestions.openedAt)),
    reasonsOf(read),
    readSetting(read, 'reasons'),
  ]);
  const counted = final === null ? null : theatreStateOf(await theatreEntriesOf(read, final.id)).counted;
  const kept = use?.recorded == null ? null : recordedBySlot.parse(use.recorded);
  const slots = await slotsAtTable(read, own);
  return {
    booked,
    use: use ?? null,
    entries,
    plan: plan ? { version: plan.version, construct: construct.parse(plan.body) } : null,
    sets: own,
    slots: slots.map((slot) => {
      const key = `${slot.setId} ${slot.lineId}`;
      return {
        ...slot,
        recorded: kept && key in kept ? (kept[key] ?? null) : slot.recorded,
        counted: counted?.get(key) ?? null,
      };
    }),
    packs: issuedPacks,
    countQuestions,
    reasons,
    asksReason: asks.askWaste,
  };
}

/** The entries of a record of use, in the order they were done. */
export async function entriesOfUse(read: Queries, caseId: string): Promise<UseEntry[]> {
  const rows = await read
    .select({ id: useEntries.id, act: useEntries.act, doneAt: useEntries.doneAt })
    .from(useEntries)
    .where(eq(useEntries.caseId, caseId))
    .orderBy(asc(useEntries.doneAt), asc(useEntries.id));
  return rows.map(({ id, act, doneAt }) => ({ id, act: useAct.parse(act), doneAt }));
}

/** What the entries are reckoned against. */
export const subjectOf = ({
  slots,
  packs: own,
  plan,
  countQuestions,
  sets: went,
  asksReason,
}: TableFacts): UseSubject => ({
  sources: [...slots, ...own],
  construct: plan?.construct ?? null,
  countQuestions,
  asksReason,
  unopenedSets: new Set(went.flatMap(({ id, unopened }) => (unopened ? [id] : []))),
});
