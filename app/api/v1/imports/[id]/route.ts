import { oneOf } from '@/app/api/v1/_reading/one';
import { findImport } from '@/db/queries/exchange/imports';

/** One list that came in. */
export const GET = oneOf('GET /api/v1/imports/[id]', { what: 'list that came in' }, ({ db, params }) =>
  findImport(db, params.id),
);
