import { oneOf } from '@/app/api/v1/_reading/one';
import { findFailedLoad } from '@/db/queries/loads/failedLoad';

/** What a failed load puts in doubt, and where each pack of it is. */
export const GET = oneOf('GET /api/v1/loads/[id]/touched', { what: 'failed load' }, ({ db, params }) =>
  findFailedLoad(db, params.id),
);
