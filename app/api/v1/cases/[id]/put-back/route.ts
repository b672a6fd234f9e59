import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { putCaseBack } from '@/db/operations/theatre/put-case-back';
import { actOnCase, caseMembers } from '../case-request';

const members = z.strictObject(caseMembers);

/** Puts a cancelled case back on the list. */
export const POST = endpoint('POST /api/v1/cases/[id]/put-back', { body: members }, (asked) =>
  actOnCase(asked, members, (request) => putCaseBack(request), 'put-case-back'),
);
