import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { finishPicking } from '@/db/operations/caseLife/finish-picking';
import { actOnKit, kitMembers } from '../kit-request';

const members = z.strictObject({ ...kitMembers, note: z.string().max(2_000).nullable() });

/** Says that the kit is picked. */
export const POST = endpoint('POST /api/v1/cases/[id]/kit/finish', { body: members }, (asked) =>
  actOnKit(asked, members, (request, { note }) => finishPicking({ ...request, note })),
);
