import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { cancelCase } from '@/db/operations/theatre/cancel-case';
import { actOnCase, caseMembers } from '../case-request';

const members = z.strictObject({ ...caseMembers, because: z.string().max(1_000) });

/** Takes a case off the list, with the reason. */
export const POST = endpoint('POST /api/v1/cases/[id]/cancel', { body: members }, (asked) =>
  actOnCase(asked, members, (request, { because }) => cancelCase({ ...request, because }), 'cancel-case'),
);
