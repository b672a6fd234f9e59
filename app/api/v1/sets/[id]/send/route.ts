import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { sendToTheatre } from '@/db/operations/turns/send-to-theatre';
import { caseId } from '@/lib/identity/ids';
import { actOnSet, setMembers } from '../set-request';

const members = z.strictObject({ ...setMembers, caseId });

/** Sends a set to theatre for one case. */
export const POST = endpoint('POST /api/v1/sets/[id]/send', { body: members }, (asked) =>
  actOnSet(asked, members, (request, body) => sendToTheatre({ ...request, caseId: body.caseId })),
);
