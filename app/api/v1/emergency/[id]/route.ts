import { oneOf } from '@/app/api/v1/_reading/one';
import { findEmergency } from '@/db/queries/emergency/record';
import { caseId } from '@/lib/identity/ids';

/** What was taken for an emergency, whom it hit, and what is left open. */
export const GET = oneOf('GET /api/v1/emergency/[id]', { what: 'emergency' }, async ({ db, params }) => {
  const id = caseId.safeParse(params.id);
  return id.success ? findEmergency(db, id.data) : null;
});
