import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { putPackIn } from '@/db/operations/loads/put-pack-in';
import { takePackOut } from '@/db/operations/loads/take-pack-out';
import { packId } from '@/lib/identity/ids';
import { readLoadRequest, seen } from '../../at-load';

const members = z.strictObject({
  ...seen,
  packId,
  take: z.enum(['in', 'out']),
  /** Of the label that was scanned. */
  copy: z.number().int().positive().nullable(),
});

/** Puts a pack into a load, or takes it out. */
export const POST = endpoint('POST /api/v1/loads/[id]/packs', { body: members }, async (access) => {
  const read = await readLoadRequest(access, members);
  if (!read.ok) return read.response;
  const { packId: id, take, copy } = read.body;
  return take === 'in'
    ? outcomeAnswer(await putPackIn({ ...read.asked, packId: id, copy }))
    : outcomeAnswer(await takePackOut({ ...read.asked, packId: id }));
});
