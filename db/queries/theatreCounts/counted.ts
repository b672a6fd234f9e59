import { and, asc, desc, eq, inArray, isNotNull, isNull } from 'drizzle-orm';
import { type CountMoment, countMoment, type TheatreEntry, theatreAct } from '@/lib/theatreCounts/act';
import type { CountSubject, SheetLine } from '@/lib/theatreCounts/reckon';
import { theatreStateOf } from '@/lib/theatreCounts/state';
import type { Queries } from '../../client';
import { casePicks, items, sets, theatreCountEntries, theatreCounts } from '../../schema';
import { setsAtTable } from '../usage/tableSets';
import { slotsAtTable } from '../usage/tableSlots';

export type TheatreCountRow = typeof theatreCounts.$inferSelect;

/** The entries of a count in theatre, in the order they were made; inside or outside a write. */
export async function theatreEntriesOf(read: Queries, countId: string): Promise<TheatreEntry[]> {
  const rows = await read
    .select()
    .from(theatreCountEntries)
    .where(eq(theatreCountEntries.countId, countId))
    .orderBy(asc(theatreCountEntries.doneAt), asc(theatreCountEntries.id));
  return rows.map(({ id, act, doneAt }) => ({ id, act: theatreAct.parse(act), doneAt }));
}

/** Sets that went into theatre for a case. */
export async function setsInTheatreFor(
  read: Queries,
  caseId: string,
): Promise<{ id: string; code: string }[]> {
  return read
    .selectDistinct({ id: sets.id, code: sets.code })
    .from(casePicks)
    .innerJoin(sets, eq(sets.id, casePicks.setId))
    .where(and(eq(casePicks.caseId, caseId), isNotNull(casePicks.issuedAt)))
    .orderBy(asc(sets.code));
}

/** What a count of that moment is about, and what it is held against: what each set was packed with, whatever it holds since. */
export async function countSubjectOf(
  read: Queries,
  caseId: string,
  moment: CountMoment,
): Promise<CountSubject & { sets: { id: string; code: string }[] }> {
  const there = await setsAtTable(read, caseId);
  const [slots, first] = await Promise.all([
    slotsAtTable(read, there),
    moment === 'first' ? null : lastClosed(read, caseId, 'first'),
  ]);
  const names = await read
    .select({ id: items.id, name: items.name })
    .from(items)
    .where(inArray(items.id, [...new Set(slots.map(({ itemId }) => itemId))]));
  const nameOf = new Map<string, string>(names.map(({ id, name }) => [id, name]));
  return {
    moment,
    sets: there.map(({ id, code }) => ({ id, code })),
    lines: slots.map(
      ({ setId, lineId, itemId, recorded }): SheetLine => ({
        setId,
        lineId,
        itemId,
        name: nameOf.get(itemId) ?? itemId,
        recorded,
      }),
    ),
    first: first === null ? null : theatreStateOf(await theatreEntriesOf(read, first.id)),
  };
}

/** The last closed count of that moment; `null` where there is none. */
export async function lastClosed(
  read: Queries,
  caseId: string,
  moment: CountMoment,
): Promise<TheatreCountRow | null> {
  const [row] = await read
    .select()
    .from(theatreCounts)
    .where(
      and(
        eq(theatreCounts.caseId, caseId),
        eq(theatreCounts.moment, moment),
        isNotNull(theatreCounts.closedAt),
      ),
    )
    .orderBy(desc(theatreCounts.closedAt), desc(theatreCounts.id))
    .limit(1);
  return row ?? null;
}

/** Whether a count in theatre, closed or open, has a figure of this set: then it was opened. */
export async function wasCountedOpen(read: Queries, caseId: string, setId: string): Promise<boolean> {
  const counts = await read
    .select({ id: theatreCounts.id, moment: theatreCounts.moment })
    .from(theatreCounts)
    .where(and(eq(theatreCounts.caseId, caseId), isNull(theatreCounts.abandonedAt)));
  for (const { id, moment } of counts) {
    countMoment.parse(moment);
    const state = theatreStateOf(await theatreEntriesOf(read, id));
    if (!state.notOpened.has(setId) && [...state.counted.keys()].some((key) => key.startsWith(`${setId} `)))
      return true;
  }
  return false;
}
