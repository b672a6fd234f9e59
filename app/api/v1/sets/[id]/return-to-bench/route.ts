import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { returnToBench } from '@/db/operations/short/return-to-bench';
import { actOnSet, setMembers } from '../set-request';

/** Takes a set that waits for a decision back to the bench. */
export const POST = endpoint(
  'POST /api/v1/sets/[id]/return-to-bench',
  { body: z.strictObject(setMembers) },
  (asked) => actOnSet(asked, z.strictObject(setMembers), returnToBench),
);
