import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { changeUrgency } from '@/db/operations/theatre/change-urgency';
import { urgency } from '@/lib/theatre/surgicalCase';
import { actOnCase, caseMembers } from '../case-request';

const members = z.strictObject({ ...caseMembers, urgency });

/** Makes a case more or less urgent. */
export const POST = endpoint('POST /api/v1/cases/[id]/urgency', { body: members }, (asked) =>
  actOnCase(
    asked,
    members,
    (request, body) => changeUrgency({ ...request, urgency: body.urgency }),
    'change-urgency',
  ),
);
