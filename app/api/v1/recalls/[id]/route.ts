import { oneOf } from '@/app/api/v1/_reading/one';
import { findRecall } from '@/db/queries/trace/recalls';

/** One recall: what it reaches, what is held for it, and who was asked. */
export const GET = oneOf('GET /api/v1/recalls/[id]', { what: 'recall' }, ({ db, params }) =>
  findRecall(db, params.id),
);
