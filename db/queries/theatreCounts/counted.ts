import { and, asc, desc, eq, inArray, isNotNull, isNull } from 'drizzle-orm';
import { type CountMoment, countMoment, type TheatreEntry, theatreAct } from '@/lib/theatreCounts/act';
import type { CountSubject, SheetLine } from '@/lib/theatreCounts/reckon';
import { theatreStateOf } from '@/lib/theatreCounts/state';
import type { Queries } from '../../client';
import {
  casePicks,
  configurationLines,
  items,
  setContents,
  sets,
  theatreCountEntries,
  theatreCounts,
} from '../../schema';

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

/** What a count of that moment is about, and what it is held against. */
export async function countSubjectOf(
  read: Queries,
  caseId: string,
  moment: CountMoment,
): Promise<CountSubject & { sets: { id: string; code: string }[] }> {
  const there = await setsInTheatreFor(read, caseId);
  const [rows, first] = await Promise.all([
    read
      .select({ setId: sets.id, line: configurationLines, name: items.name, found: setContents.found })
      .from(sets)
      .innerJoin(configurationLines, eq(configurationLines.versionId, sets.versionId))
      .innerJoin(items, eq(items.id, configurationLines.itemId))
      .leftJoin(
        setContents,
        and(eq(setContents.setId, sets.id), eq(setContents.lineId, configurationLines.id)),
      )
      .where(
        inArray(
          sets.id,
          there.map(({ id }) => id),
        ),
      )
      .orderBy(
        asc(sets.code),
        asc(configurationLines.layer),
        asc(configurationLines.row),
        asc(configurationLines.slot),
      ),
    moment === 'first' ? null : lastClosed(read, caseId, 'first'),
  ]);
  return {
    moment,
    sets: there,
    lines: rows.map(
      ({ setId, line, name, found }): SheetLine => ({
        setId,
        lineId: line.id,
        itemId: line.itemId,
        name,
        recorded: found,
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
