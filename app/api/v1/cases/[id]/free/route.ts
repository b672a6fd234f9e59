import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';

import { freeSet } from '@/db/operations/theatre/free-set';
import { setId } from '@/lib/identity/ids';
import { actOnCase, caseMembers } from '../case-request';

const members = z.strictObject({ ...caseMembers, setId });

/** Takes the promise of a set to a case back. */
export const POST = endpoint('POST /api/v1/cases/[id]/free', { body: members }, (asked) =>
  actOnCase(asked, members, (request, body) => freeSet({ ...request, setId: body.setId })),
);
