import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { beginWash } from '@/db/operations/turns/begin-wash';
import { actOnSet, setMembers } from '../set-request';

/** Puts a set into washing. */
export const POST = endpoint(
  'POST /api/v1/sets/[id]/begin-wash',
  { body: z.strictObject(setMembers) },
  (asked) => actOnSet(asked, z.strictObject(setMembers), beginWash),
);
