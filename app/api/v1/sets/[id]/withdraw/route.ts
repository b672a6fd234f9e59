import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { withdrawSet } from '@/db/operations/turns/withdraw-set';
import { actOnSet, setMembers } from '../set-request';

const members = z.strictObject({ ...setMembers, reason: z.string('say why') });

/** Takes a set out of service. */
export const POST = endpoint('POST /api/v1/sets/[id]/withdraw', { body: members }, (asked) =>
  actOnSet(asked, members, (request, { reason }) => withdrawSet({ ...request, reason }), 'withdraw-set'),
);
