import { eq, inArray } from 'drizzle-orm';
import { type LoadState, loadState } from '@/lib/loads/load';
import { mayRead, type Reading } from '../../reader';
import { loads, sterilisers } from '../../schema';
import { idsAfter, inOrderOf, type PlaceInList } from './idsAfter';

/** One steriliser run, as it is recorded. */
export interface LoadRecorded {
  id: string;
  number: string;
  state: LoadState;
  steriliser: { id: string; name: string };
  programme: string;
  cycleNumber: string | null;
  madeUpAt: string;
  startedAt: string | null;
  endedAt: string | null;
  decidedAt: string | null;
  revision: number;
}

/** Loads, the last made up first. `undefined`: the place is not there any more. */
export async function loadsRecorded(db: Reading, place: PlaceInList): Promise<LoadRecorded[] | undefined> {
  mayRead(db, 'readHospital');
  const ids = await idsAfter(db.read, { table: loads, id: loads.id }, place);
  if (ids === undefined) return undefined;
  const rows = await db.read
    .select({ load: loads, name: sterilisers.name })
    .from(loads)
    .innerJoin(sterilisers, eq(sterilisers.id, loads.steriliserId))
    .where(inArray(loads.id, ids));
  return inOrderOf(
    ids,
    rows.map(
      ({ load, name }): LoadRecorded => ({
        id: load.id,
        number: load.number,
        state: loadState.parse(load.state),
        steriliser: { id: load.steriliserId, name },
        programme: load.programme,
        cycleNumber: load.cycleNumber,
        madeUpAt: load.madeUpAt,
        startedAt: load.startedAt,
        endedAt: load.endedAt,
        decidedAt: load.decidedAt,
        revision: load.revision,
      }),
    ),
  );
}
