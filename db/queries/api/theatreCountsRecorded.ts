import { eq, inArray } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { type CountMoment, countMoment } from '@/lib/theatreCounts/act';
import { mayRead, type Reading } from '../../reader';
import { cases, people, theatreCounts } from '../../schema';
import { idsAfter, inOrderOf, type PlaceInList } from './idsAfter';

/** That a case was counted in theatre, by which two and when. Its figures are told with the counts of the case. */
export interface TheatreCountRecorded {
  id: string;
  case: { id: string; reference: string };
  moment: CountMoment;
  by: string;
  /** With whom it was closed. */
  with: string | null;
  beganAt: string;
  closedAt: string | null;
  abandonedAt: string | null;
}

/** Counts in theatre, the last begun first. `undefined`: the place is not there any more. */
export async function theatreCountsRecorded(
  db: Reading,
  place: PlaceInList,
): Promise<TheatreCountRecorded[] | undefined> {
  mayRead(db, 'readHospital');
  const ids = await idsAfter(db.read, { table: theatreCounts, id: theatreCounts.id }, place);
  return ids && inOrderOf(ids, await recorded(db, ids));
}

/** One count in theatre; `null` where there is none of that id. */
export async function findTheatreCountRecorded(
  db: Reading,
  id: string,
): Promise<TheatreCountRecorded | null> {
  mayRead(db, 'readHospital');
  return (await recorded(db, [id]))[0] ?? null;
}

async function recorded({ read }: Reading, ids: readonly string[]): Promise<TheatreCountRecorded[]> {
  const second = alias(people, 'second');
  const rows = await read
    .select({ count: theatreCounts, reference: cases.reference, by: people.name, together: second.name })
    .from(theatreCounts)
    .innerJoin(cases, eq(cases.id, theatreCounts.caseId))
    .innerJoin(people, eq(people.id, theatreCounts.personId))
    .leftJoin(second, eq(second.id, theatreCounts.secondPersonId))
    .where(inArray(theatreCounts.id, [...ids]));
  return rows.map(({ count, reference, by, together }) => ({
    id: count.id,
    case: { id: count.caseId, reference },
    moment: countMoment.parse(count.moment),
    by,
    with: together,
    beganAt: count.beganAt,
    closedAt: count.closedAt,
    abandonedAt: count.abandonedAt,
  }));
}
