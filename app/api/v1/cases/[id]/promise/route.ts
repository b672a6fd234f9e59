import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { promiseSet } from '@/db/operations/theatre/promise-set';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import { setId } from '@/lib/identity/ids';
import { actOnCase, caseMembers } from '../case-request';

const members = z.strictObject({ ...caseMembers, setId });

/** Promises a set to a case. */
export const POST = endpoint('POST /api/v1/cases/[id]/promise', { body: members }, async (asked) => {
  const round = await roundTimes(asked.db);
  return actOnCase(asked, members, (request, body) => promiseSet({ ...request, setId: body.setId, round }));
});
