import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { issueKit } from '@/db/operations/caseLife/issue-kit';
import { actOnKit, kitMembers } from '../kit-request';

const members = z.strictObject(kitMembers);

/** The whole kit leaves the store, or nothing of it does. */
export const POST = endpoint('POST /api/v1/cases/[id]/kit/issue', { body: members }, (asked) =>
  actOnKit(asked, members, (request) => issueKit(request)),
);
