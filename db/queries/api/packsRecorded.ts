import { eq, inArray } from 'drizzle-orm';
import { type PackState, packState } from '@/lib/packs/pack';
import { mayRead, type Reading } from '../../reader';
import { packs, people } from '../../schema';
import { idsAfter, inOrderOf, type PlaceInList } from './idsAfter';

/** A sterile barrier round one set or one item, as it is recorded. */
export interface PackRecorded {
  id: string;
  number: string;
  kind: 'set' | 'pouch';
  state: PackState;
  setId: string | null;
  itemId: string | null;
  lot: string | null;
  useBy: string | null;
  loadId: string | null;
  stockId: string | null;
  packedBy: string;
  packedAt: string;
  revision: number;
}

/** Packs, the last recorded first; of one set where it is named. `undefined`: the place is not there any more. */
export async function packsRecorded(
  db: Reading,
  { setId, ...place }: PlaceInList & { setId: string | null },
): Promise<PackRecorded[] | undefined> {
  mayRead(db, 'readHospital');
  const where = setId === null ? undefined : eq(packs.setId, setId);
  const ids = await idsAfter(db.read, { table: packs, id: packs.id, where }, place);
  if (ids === undefined) return undefined;
  const rows = await db.read
    .select({ pack: packs, by: people.name })
    .from(packs)
    .innerJoin(people, eq(people.id, packs.packedBy))
    .where(inArray(packs.id, ids));
  return inOrderOf(
    ids,
    rows.map(
      ({ pack, by }): PackRecorded => ({
        id: pack.id,
        number: pack.number,
        kind: pack.kind === 'set' ? 'set' : 'pouch',
        state: packState.parse(pack.state),
        setId: pack.setId,
        itemId: pack.itemId,
        lot: pack.lot,
        useBy: pack.useBy,
        loadId: pack.loadId,
        stockId: pack.stockId,
        packedBy: by,
        packedAt: pack.packedAt,
        revision: pack.revision,
      }),
    ),
  );
}
