import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { listChanges } from '@/db/queries/theatre/listChanges';

/** What changed on the list since you last marked it as seen. */
export const GET = oneOf('GET /api/v1/theatre-list/changes', { what: 'change' }, ({ db, person }) =>
  listChanges(db, person, now()),
);
