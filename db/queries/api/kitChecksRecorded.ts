import { eq, inArray } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { cases, kitChecks, people } from '../../schema';
import { idsAfter, inOrderOf, type PlaceInList } from './idsAfter';

/** That a second person looked through a kit, and when. What they found is told with the check of the case, to who may see it. */
export interface KitCheckRecorded {
  id: string;
  case: { id: string; reference: string };
  person: { id: string; name: string };
  beganAt: string;
  closedAt: string | null;
  abandonedAt: string | null;
}

/** Checks of kits, the last begun first. `undefined`: the place is not there any more. */
export async function kitChecksRecorded(
  db: Reading,
  place: PlaceInList,
): Promise<KitCheckRecorded[] | undefined> {
  mayRead(db, 'readHospital');
  const ids = await idsAfter(db.read, { table: kitChecks, id: kitChecks.id }, place);
  return ids && inOrderOf(ids, await recorded(db, ids));
}

/** One check of a kit; `null` where there is none of that id. */
export async function findKitCheckRecorded(db: Reading, id: string): Promise<KitCheckRecorded | null> {
  mayRead(db, 'readHospital');
  return (await recorded(db, [id]))[0] ?? null;
}

async function recorded({ read }: Reading, ids: readonly string[]): Promise<KitCheckRecorded[]> {
  const rows = await read
    .select({ check: kitChecks, reference: cases.reference, by: people.name })
    .from(kitChecks)
    .innerJoin(cases, eq(cases.id, kitChecks.caseId))
    .innerJoin(people, eq(people.id, kitChecks.personId))
    .where(inArray(kitChecks.id, [...ids]));
  return rows.map(({ check, reference, by }) => ({
    id: check.id,
    case: { id: check.caseId, reference },
    person: { id: check.personId, name: by },
    beganAt: check.beganAt,
    closedAt: check.closedAt,
    abandonedAt: check.abandonedAt,
  }));
}
