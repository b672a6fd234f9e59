import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { withPlan } from '@/app/_server/plan-again';
import { endWash } from '@/db/operations/turns/end-wash';
import { actOnSet, setMembers } from '../set-request';

const members = z.strictObject({
  ...setMembers,
  seen: z.enum(['clean', 'dirty'], 'what was seen: clean or dirty'),
  note: z.string().nullish(),
});

/** Takes a set out of washing: to the bench, or held because it was seen to be dirty. */
export const POST = endpoint('POST /api/v1/sets/[id]/end-wash', { body: members }, (asked) =>
  actOnSet(asked, members, async (request, { seen, note }, { db, person }) => {
    const outcome = await endWash({ ...request, seen, note });
    // clean, it goes on as planned
    return withPlan(db, person, seen === 'dirty' ? 'end-wash' : null, outcome);
  }),
);
