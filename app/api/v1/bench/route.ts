import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { beginCount } from '@/db/operations/bench/begin-count';
import { benchCountsRecorded } from '@/db/queries/api/benchCountsRecorded';
import { countId, setId } from '@/lib/identity/ids';

const members = z.strictObject({ countId, setId, purpose: z.enum(['count', 'check', 'settle']) });

/** Begins a count of a set, or takes up the one this person has open. */
export const POST = endpoint(
  'POST /api/v1/bench',
  { body: members },
  async ({ db, person, session, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { workstationId } = session;
    return outcomeAnswer(await beginCount({ db, now: now(), person, workstationId, ...body.value }), 201);
  },
);

const narrowed = { set: z.string().max(80).optional().describe('The id of a set: its counts alone.') };

/** Counts at the bench, the last begun first: of which set, by whom and when; never what was found. */
export const GET = pagesOf('GET /api/v1/bench', {
  query: narrowed,
  rows: ({ db, query }, { after, limit }) =>
    benchCountsRecorded(db, {
      setId: query.set ?? null,
      after: after === null ? null : String(after[0]),
      limit,
    }),
  keyOf: ({ id }) => [id],
});
