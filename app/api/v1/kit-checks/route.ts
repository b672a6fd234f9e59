import { pagesOf } from '@/app/api/v1/_reading/list';
import { kitChecksRecorded } from '@/db/queries/api/kitChecksRecorded';

/** Checks of kits by a second person, the last begun first; what was found is told with the case. */
export const GET = pagesOf('GET /api/v1/kit-checks', {
  rows: ({ db }, { after, limit }) =>
    kitChecksRecorded(db, { after: after === null ? null : String(after[0]), limit }),
  keyOf: ({ id }) => [id],
});
