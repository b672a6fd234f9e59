import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { openDecisions } from '@/db/queries/short/screen';

/** Sets that wait for somebody’s decision because they are short. */
export const GET = oneOf('GET /api/v1/work/short', { what: 'list' }, async ({ db }) => ({
  decisions: await openDecisions(db, now()),
}));
