import { oneOf } from '@/app/api/v1/_reading/one';
import { findLoad } from '@/db/queries/loads/findLoad';

/** One load: its packs, its cycle, what was looked at, and what was decided. */
export const GET = oneOf('GET /api/v1/loads/[id]', { what: 'load' }, ({ db, params }) =>
  findLoad(db, params.id),
);
