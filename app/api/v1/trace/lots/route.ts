import { z } from 'zod';
import { oneOf } from '@/app/api/v1/_reading/one';
import { traceLot } from '@/db/queries/trace/lot';

const asked = {
  item: z.string().max(80).describe('The id of the item.'),
  lot: z.string().max(40).describe('The lot.'),
};

/** A lot forward: from its receipt to shelves, slots and cases, with its balance. */
export const GET = oneOf('GET /api/v1/trace/lots', { what: 'lot', query: asked }, ({ db, query }) =>
  traceLot(db, query.item, query.lot),
);
