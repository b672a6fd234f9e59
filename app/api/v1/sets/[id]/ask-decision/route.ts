import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { askDecision } from '@/db/operations/short/ask-decision';
import { actOnSet, setMembers } from '../set-request';

/** Sets a short set aside until it is decided. */
export const POST = endpoint(
  'POST /api/v1/sets/[id]/ask-decision',
  { body: z.strictObject(setMembers) },
  (asked) => actOnSet(asked, z.strictObject(setMembers), askDecision),
);
