import { and, asc, eq, inArray, isNotNull, isNull } from 'drizzle-orm';
import { z } from 'zod';
import { returnOutcome } from '@/lib/caseLife/account';
import { packContents } from '@/lib/packs/pack';
import { type Construct, construct } from '@/lib/plans/plan';
import { theatreStateOf } from '@/lib/theatreCounts/state';
import type { PackSource, SlotSource } from '@/lib/usage/account';
import { type UseEntry, useAct } from '@/lib/usage/act';
import type { UsedItem } from '@/lib/usage/differences';
import type { UseSubject } from '@/lib/usage/reckon';
import type { Queries } from '../../client';
import {
  casePicks,
  caseReturns,
  cases,
  caseUses,
  configurationLines,
  items,
  packs,
  plans,
  setContents,
  sets,
  stock,
  theatreQuestions,
  useEntries,
  useReturns,
} from '../../schema';
import { lastClosed, theatreEntriesOf } from '../theatreCounts/counted';

export type UseRow = typeof caseUses.$inferSelect;

/** A set that went into theatre for the case. */
export interface TableSet {
  id: string;
  code: string;
  pickId: string;
  issuedAt: string;
  /** The sterile pack it went in; `null`: not on record. */
  packId: string | null;
  useBy: string | null;
  held: boolean;
  /** It came back unopened. */
  unopened: boolean;
}

/** Single packs of one heap that were issued to the case. */
export interface TablePack extends PackSource {
  stockId: string;
  packId: string | null;
  lot: string | null;
  useBy: string | null;
  held: boolean;
  owner: 'ours' | 'consignment';
}

/** A line of such a set, and where it lies. */
export interface TableSlot extends SlotSource {
  layer: number;
  row: number;
  slot: number;
}

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
}

const recordedBySlot = z.record(z.string(), z.number().int().nullable());

/** The table of one case as it is on record, inside or outside a write; `null` when there is no such case. */
export async function tableFacts(read: Queries, caseId: string): Promise<TableFacts | null> {
  const [booked] = await read.select().from(cases).where(eq(cases.id, caseId));
  if (!booked) return null;
  const [[use], entries, [plan], own, issuedPacks, final, countQuestions] = await Promise.all([
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
  ]);
  const counted = final === null ? null : theatreStateOf(await theatreEntriesOf(read, final.id)).counted;
  const kept = use?.recorded == null ? null : recordedBySlot.parse(use.recorded);
  const slots = await slotsOf(read, own);
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

async function setsAtTable(read: Queries, caseId: string): Promise<TableSet[]> {
  const rows = await read
    .select({ pick: casePicks, set: sets, back: caseReturns.outcome })
    .from(casePicks)
    .innerJoin(sets, eq(sets.id, casePicks.setId))
    .leftJoin(caseReturns, eq(caseReturns.pickId, casePicks.id))
    .where(and(eq(casePicks.caseId, caseId), isNotNull(casePicks.issuedAt)))
    .orderBy(asc(sets.code), asc(casePicks.doneAt));
  // a set that went twice is there as it went last
  return [...new Map(rows.map((row) => [row.set.id, row])).values()].map(({ pick, set, back }) => ({
    id: set.id,
    code: set.code,
    pickId: pick.id,
    issuedAt: pick.issuedAt ?? '',
    packId: pick.packId ?? (set.caseId === caseId ? set.packId : null),
    useBy: pick.useBy,
    held: set.step === 'held' && set.caseId === caseId,
    unopened: back === 'returnedUnopened',
  }));
}

/** Single packs issued to a case, with what the return alone says of them. */
export async function packsAtTable(read: Queries, caseId: string): Promise<TablePack[]> {
  const rows = await read
    .select({ pick: casePicks, heldBecause: stock.heldBecause, owner: stock.owner, use: items.use })
    .from(casePicks)
    .innerJoin(stock, eq(stock.id, casePicks.stockId))
    .innerJoin(items, eq(items.id, stock.itemId))
    .where(and(eq(casePicks.caseId, caseId), isNotNull(casePicks.issuedAt)))
    .orderBy(asc(casePicks.issuedAt), asc(casePicks.id));
  const returns = await read
    .select({ row: caseReturns })
    .from(caseReturns)
    .leftJoin(useReturns, eq(useReturns.returnId, caseReturns.id))
    .where(
      and(
        isNull(useReturns.returnId),
        inArray(
          caseReturns.pickId,
          rows.map(({ pick }) => pick.id),
        ),
      ),
    )
    .orderBy(asc(caseReturns.doneAt), asc(caseReturns.id));
  return rows.map(({ pick, heldBecause, owner, use }) => ({
    kind: 'pack',
    pickId: pick.id,
    stockId: pick.stockId ?? '',
    itemId: pick.itemId ?? '',
    reusable: use === 'reprocessable',
    quantity: pick.quantity,
    packId: pick.packId,
    lot: pick.lot,
    useBy: pick.useBy,
    held: heldBecause !== null,
    owner: owner === 'consignment' ? 'consignment' : 'ours',
    returns: returns
      .filter(({ row }) => row.pickId === pick.id)
      .map(({ row }) => ({ id: row.id, outcome: returnOutcome.parse(row.outcome), quantity: row.quantity })),
  }));
}

/** Lines as each set was packed; of one that has no pack on record, as it holds now. */
async function slotsOf(read: Queries, own: readonly TableSet[]): Promise<TableSlot[]> {
  const ids = own.map(({ id }) => id);
  const [packRows, held] = await Promise.all([
    read
      .select({ id: packs.id, versionId: packs.versionId, contents: packs.contents })
      .from(packs)
      .where(
        inArray(
          packs.id,
          own.flatMap(({ packId }) => packId ?? []),
        ),
      ),
    read
      .select({ setId: sets.id, versionId: sets.versionId, contents: setContents })
      .from(sets)
      .leftJoin(setContents, eq(setContents.setId, sets.id))
      .where(inArray(sets.id, ids)),
  ]);
  const versionOf = new Map(
    own.map(({ id, packId }) => [
      id,
      packRows.find((pack) => pack.id === packId)?.versionId ??
        held.find(({ setId }) => setId === id)?.versionId ??
        '',
    ]),
  );
  const lines = await read
    .select({ line: configurationLines, use: items.use })
    .from(configurationLines)
    .innerJoin(items, eq(items.id, configurationLines.itemId))
    .where(inArray(configurationLines.versionId, [...new Set(versionOf.values())]))
    .orderBy(asc(configurationLines.layer), asc(configurationLines.row), asc(configurationLines.slot));
  return own.flatMap(({ id, packId }) => {
    const pack = packRows.find((one) => one.id === packId);
    const packed =
      pack && new Map(packContents.parse(pack.contents).map((one) => [one.lineId as string, one.found]));
    return lines
      .filter(({ line }) => line.versionId === versionOf.get(id))
      .map(
        ({ line, use }): TableSlot => ({
          kind: 'slot',
          setId: id,
          lineId: line.id,
          itemId: line.itemId,
          reusable: use === 'reprocessable',
          layer: line.layer,
          row: line.row,
          slot: line.slot,
          recorded:
            packed?.get(line.id) ??
            held.find((one) => one.setId === id && one.contents?.lineId === line.id)?.contents?.found ??
            null,
          counted: null,
        }),
      );
  });
}

export interface TableItem extends UsedItem {
  code: string;
  name: string;
  status: string;
  gtin: string | null;
}

/** What is to be known of items by a record of use, by id. */
export async function tableItems(read: Queries, ids: Iterable<string>): Promise<Map<string, TableItem>> {
  const rows = await read
    .select({
      itemId: items.id,
      code: items.code,
      name: items.name,
      kind: items.kind,
      status: items.status,
      gtin: items.gtin,
      screwFamily: items.screwFamily,
      lengthUm: items.lengthUm,
    })
    .from(items)
    .where(inArray(items.id, [...new Set(ids)]));
  return new Map(rows.map((row) => [row.itemId, row]));
}

/** Items of everything at the table, of what is planned there, and of what is recorded. */
export const itemsAtTable = ({ slots, packs: own, plan, entries }: TableFacts): string[] => [
  ...slots.map(({ itemId }) => itemId),
  ...own.map(({ itemId }) => itemId),
  ...(plan?.construct.plates.map(({ plateItemId }) => plateItemId as string) ?? []),
  ...entries.flatMap(({ act }) => (act.kind === 'piece' ? [act.itemId as string] : [])),
];

/** What the entries are reckoned against. */
export const subjectOf = ({
  slots,
  packs: own,
  plan,
  countQuestions,
  sets: went,
}: TableFacts): UseSubject => ({
  sources: [...slots, ...own],
  construct: plan?.construct ?? null,
  countQuestions,
  unopenedSets: new Set(went.flatMap(({ id, unopened }) => (unopened ? [id] : []))),
});
