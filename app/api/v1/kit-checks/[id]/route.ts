import { oneOf } from '@/app/api/v1/_reading/one';
import { findKitCheckRecorded } from '@/db/queries/api/kitChecksRecorded';

/** One check of a kit: of which case, by whom and when. */
export const GET = oneOf('GET /api/v1/kit-checks/[id]', { what: 'check' }, ({ db, params }) =>
  findKitCheckRecorded(db, params.id),
);
