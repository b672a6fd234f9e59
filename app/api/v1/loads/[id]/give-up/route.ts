import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { giveUpLoad } from '@/db/operations/loads/give-up-load';
import { readLoadRequest, seen } from '../../at-load';

const members = z.strictObject({ ...seen });

/** Gives up a load that was never started. */
export const POST = endpoint('POST /api/v1/loads/[id]/give-up', { body: members }, async (access) => {
  const read = await readLoadRequest(access, members);
  if (!read.ok) return read.response;
  return outcomeAnswer(await giveUpLoad({ ...read.asked }));
});
