import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { addIndicator, indicatorEntry } from '@/db/operations/loads/add-indicator';
import { readLoadRequest, seen } from '../../at-load';

const members = z.strictObject({ ...seen, entry: z.unknown() });

/** Records an indicator that went with a load. */
export const POST = endpoint(
  'POST /api/v1/loads/[id]/indicators',
  { body: members.extend({ entry: indicatorEntry }) },
  async (access) => {
    const read = await readLoadRequest(access, members);
    if (!read.ok) return read.response;
    return outcomeAnswer(await addIndicator({ ...read.asked, entry: read.body.entry }));
  },
);
