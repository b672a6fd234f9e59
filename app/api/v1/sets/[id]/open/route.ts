import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { openSet } from '@/db/operations/turns/open-set';
import { actOnSet, setMembers } from '../set-request';

/** Opens a sealed set on the bench; it stops being sterile. */
export const POST = endpoint('POST /api/v1/sets/[id]/open', { body: z.strictObject(setMembers) }, (asked) =>
  actOnSet(asked, z.strictObject(setMembers), openSet),
);
