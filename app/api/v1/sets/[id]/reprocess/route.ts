import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { reprocessSet } from '@/db/operations/turns/reprocess-set';
import { actOnSet, setMembers } from '../set-request';

const members = z.strictObject({ ...setMembers, reason: z.string('say why') });

/** Sends a packed or sterile set round again. */
export const POST = endpoint('POST /api/v1/sets/[id]/reprocess', { body: members }, (asked) =>
  actOnSet(asked, members, (request, { reason }) => reprocessSet({ ...request, reason })),
);
