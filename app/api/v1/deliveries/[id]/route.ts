import { oneOf } from '@/app/api/v1/_reading/one';
import { findDelivery } from '@/db/queries/shelf/receiving';

/** One delivery with its lines. */
export const GET = oneOf('GET /api/v1/deliveries/[id]', { what: 'delivery' }, ({ db, params }) =>
  findDelivery(db, params.id),
);
