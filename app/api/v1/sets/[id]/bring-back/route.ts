import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { bringBackSet } from '@/db/operations/turns/bring-back-set';
import { actOnSet, setMembers } from '../set-request';

const members = z.strictObject({ ...setMembers, reason: z.string('say why') });

/** Brings a set back into service. */
export const POST = endpoint('POST /api/v1/sets/[id]/bring-back', { body: members }, (asked) =>
  actOnSet(asked, members, (request, { reason }) => bringBackSet({ ...request, reason })),
);
