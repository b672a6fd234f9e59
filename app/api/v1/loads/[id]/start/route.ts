import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { startLoad } from '@/db/operations/loads/start-load';
import { readLoadRequest, seen } from '../../at-load';

const members = z.strictObject({ ...seen, cycleNumber: z.string().max(60) });

/** Starts a load. */
export const POST = endpoint('POST /api/v1/loads/[id]/start', { body: members }, async (access) => {
  const read = await readLoadRequest(access, members);
  if (!read.ok) return read.response;
  return outcomeAnswer(await startLoad({ ...read.asked, cycleNumber: read.body.cycleNumber }));
});
