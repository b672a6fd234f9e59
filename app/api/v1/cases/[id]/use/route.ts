import { oneOf } from '@/app/api/v1/_reading/one';
import { recordOfUse } from '@/db/queries/usage/recordOfUse';

/** The record of what was used in a case; nothing of a set that whoever asks counts blind. */
export const GET = oneOf('GET /api/v1/cases/[id]/use', { what: 'case' }, ({ db, params }) =>
  recordOfUse(db, params.id),
);
