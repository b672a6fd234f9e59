import { eq, inArray } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { people, restocks } from '../../schema';
import type { Proposal } from '../restock/proposal';
import { idsAfter, inOrderOf, type PlaceInList } from './idsAfter';

/** A proposal of what to order, without its lines. */
export type RestockRecorded = Pick<
  Proposal,
  | 'id'
  | 'number'
  | 'state'
  | 'proposedBy'
  | 'proposedAt'
  | 'lookedAt'
  | 'enough'
  | 'withoutUse'
  | 'decidedAt'
  | 'revision'
>;

/** Proposals of what to order, the newest first. `undefined`: the place is not there any more. */
export async function restocksRecorded(
  db: Reading,
  place: PlaceInList,
): Promise<RestockRecorded[] | undefined> {
  mayRead(db, 'readHospital');
  const ids = await idsAfter(db.read, { table: restocks, id: restocks.id }, place);
  if (ids === undefined) return undefined;
  const rows = await db.read
    .select({ row: restocks, by: people.name })
    .from(restocks)
    .innerJoin(people, eq(people.id, restocks.proposedBy))
    .where(inArray(restocks.id, ids));
  return inOrderOf(
    ids,
    rows.map(
      ({ row, by }): RestockRecorded => ({
        id: row.id,
        number: row.number,
        state: row.state as Proposal['state'],
        proposedBy: by,
        proposedAt: row.proposedAt,
        lookedAt: row.lookedAt,
        enough: row.enough,
        withoutUse: row.withoutUse,
        decidedAt: row.decidedAt,
        revision: row.revision,
      }),
    ),
  );
}
