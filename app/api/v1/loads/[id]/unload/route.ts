import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { unloadPack } from '@/db/operations/loads/unload-pack';
import { packId } from '@/lib/identity/ids';
import { unloadedAs } from '@/lib/loads/load';
import { readLoadRequest, seen } from '../../at-load';

const members = z.strictObject({ ...seen, packId, as: unloadedAs });

/** Records how a pack was found when it came out. */
export const POST = endpoint('POST /api/v1/loads/[id]/unload', { body: members }, async (access) => {
  const read = await readLoadRequest(access, members);
  if (!read.ok) return read.response;
  return outcomeAnswer(await unloadPack({ ...read.asked, packId: read.body.packId, as: read.body.as }));
});
