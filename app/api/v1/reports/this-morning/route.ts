import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { topicsOf } from '@/app/morning/topics';

/** All a theatre manager sees to at the beginning of a day. */
export const GET = oneOf('GET /api/v1/reports/this-morning', { what: 'report' }, async ({ db }) => ({
  topics: await topicsOf(db, now()),
}));
