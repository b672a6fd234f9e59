import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { endLoad } from '@/db/operations/loads/end-load';
import { readLoadRequest, seen } from '../../at-load';

const members = z.strictObject({ ...seen });

/** Ends the run of a load. */
export const POST = endpoint('POST /api/v1/loads/[id]/end', { body: members }, async (access) => {
  const read = await readLoadRequest(access, members);
  if (!read.ok) return read.response;
  return outcomeAnswer(await endLoad({ ...read.asked }));
});
