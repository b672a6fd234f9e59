import { oneOf } from '@/app/api/v1/_reading/one';
import { loadPack } from '@/db/queries/packs/pack';

/** One pack: what is in it, its label, its load, and what was decided on it. */
export const GET = oneOf('GET /api/v1/packs/[id]', { what: 'pack' }, ({ db, params }) =>
  loadPack(db, params.id),
);
