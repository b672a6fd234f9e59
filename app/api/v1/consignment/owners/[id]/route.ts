import { oneOf } from '@/app/api/v1/_reading/one';
import { findOwner } from '@/db/queries/consignment/owners';

/** One owner: what of theirs lies here, lot by lot, and what waits to be told to them. */
export const GET = oneOf('GET /api/v1/consignment/owners/[id]', { what: 'owner' }, ({ db, params }) =>
  findOwner(db, params.id),
);
