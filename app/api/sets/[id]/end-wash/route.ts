import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { endWash } from '@/db/operations/turns/end-wash';
import { actOnSet, setMembers } from '../set-request';

const members = z.strictObject({
  ...setMembers,
  seen: z.enum(['clean', 'dirty'], 'what was seen: clean or dirty'),
  note: z.string().nullish(),
});

/** Takes a set out of washing: to the bench, or held because it was seen to be dirty. */
export const POST = endpoint('POST /api/sets/[id]/end-wash', (asked) =>
  actOnSet(asked, members, (request, { seen, note }) => endWash({ ...request, seen, note })),
);
