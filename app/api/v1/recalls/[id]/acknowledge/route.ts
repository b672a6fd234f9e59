import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { acknowledgeRecall } from '@/db/operations/trace/acknowledge-recall';
import { recallId } from '@/lib/identity/ids';

const members = z.strictObject({ note: z.string().max(2_000) });

/** The person of this session says that they know of a recall and did what they were asked. */
export const POST = endpoint(
  'POST /api/v1/recalls/[id]/acknowledge',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = recallId.safeParse(params.id);
    if (!id.success) return noSuch('recall');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await acknowledgeRecall({ db, now: now(), person, recallId: id.data, note: body.value.note }),
    );
  },
);
