import { oneOf } from '@/app/api/v1/_reading/one';
import { findProposal } from '@/db/queries/restock/proposal';

/** One proposal of what to order, line by line, with how each was worked out. */
export const GET = oneOf('GET /api/v1/restock/[id]', { what: 'proposal' }, ({ db, params }) =>
  findProposal(db, params.id),
);
