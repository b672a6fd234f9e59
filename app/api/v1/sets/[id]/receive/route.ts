import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { receiveSet } from '@/db/operations/turns/receive-set';
import { actOnSet, setMembers } from '../set-request';

/** Takes a set back from theatre. */
export const POST = endpoint(
  'POST /api/v1/sets/[id]/receive',
  { body: z.strictObject(setMembers) },
  (asked) => actOnSet(asked, z.strictObject(setMembers), receiveSet),
);
