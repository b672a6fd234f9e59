import { asc, eq, inArray } from 'drizzle-orm';
import { type StartId, startId } from '@/lib/identity/ids';
import { type Construct, construct } from '@/lib/plans/plan';
import { itemFromRow } from '../mappers/item';
import { mayRead, type Reading } from '../reader';
import { items, planStarts } from '../schema';

export interface PlanStart {
  id: StartId;
  name: string;
  construct: Construct;
  savedAt: string;
  /** Plates it names that are no longer current, or that the catalogue does not have. */
  platesGone: { name: string; status: 'withdrawn' | 'recalled' | 'unknown' }[];
  /** Codes of its plates, for the list. */
  plateNames: string[];
}

/** One person's saved starts, by name, each with what has been withdrawn from under it. */
export async function listPlanStarts(db: Reading, personId: string): Promise<PlanStart[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read
    .select()
    .from(planStarts)
    .where(eq(planStarts.personId, personId))
    .orderBy(asc(planStarts.name));
  const starts = rows.map((row) => ({ ...row, construct: construct.parse(row.body) }));
  const plateIds = [
    ...new Set(starts.flatMap((start) => start.construct.plates.map((plate) => plate.plateItemId))),
  ];
  const known = new Map(
    plateIds.length > 0
      ? (await read.select().from(items).where(inArray(items.id, plateIds))).map((row) => [
          row.id,
          itemFromRow(row),
        ])
      : [],
  );
  return starts.map((start) => {
    const plates = start.construct.plates.map(({ plateItemId }) => {
      const plate = known.get(plateItemId);
      return { name: plate ? plate.name : plateItemId, status: plate ? plate.status : ('unknown' as const) };
    });
    return {
      id: startId.parse(start.id),
      name: start.name,
      construct: start.construct,
      savedAt: start.savedAt,
      platesGone: plates.flatMap(({ name, status }) => (status === 'current' ? [] : [{ name, status }])),
      plateNames: plates.map(({ name }) => name),
    };
  });
}
