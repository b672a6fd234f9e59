import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { beginCount } from '@/db/operations/bench/begin-count';
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
