import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { readIndicator } from '@/db/operations/loads/read-indicator';
import { indicatorId } from '@/lib/identity/ids';
import { readLoadRequest, seen } from '../../at-load';

const members = z.strictObject({ ...seen, indicatorId, result: z.enum(['passed', 'failed']) });

/** Records the result of an indicator. */
export const POST = endpoint('POST /api/v1/loads/[id]/results', { body: members }, async (access) => {
  const read = await readLoadRequest(access, members);
  if (!read.ok) return read.response;
  return outcomeAnswer(
    await readIndicator({ ...read.asked, indicatorId: read.body.indicatorId, result: read.body.result }),
  );
});
