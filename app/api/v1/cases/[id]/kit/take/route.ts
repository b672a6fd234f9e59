import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { takeKit } from '@/db/operations/caseLife/take-kit';
import { actOnKit, kitMembers } from '../kit-request';

const members = z.strictObject(kitMembers);

/** The kit has arrived in theatre and is taken over there. */
export const POST = endpoint('POST /api/v1/cases/[id]/kit/take', { body: members }, (asked) =>
  actOnKit(asked, members, (request) => takeKit(request)),
);
