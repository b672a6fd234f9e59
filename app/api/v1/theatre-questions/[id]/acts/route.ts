import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { workOnQuestion } from '@/db/operations/theatreCounts/work-on-question';
import { questionId } from '@/lib/identity/ids';
import { sentQuestionAct } from '@/lib/theatreCounts/question';

const members = z.strictObject({ act: z.looseObject({}) });

/** Records what was done about an open question; it stays open. */
export const POST = endpoint(
  'POST /api/v1/theatre-questions/[id]/acts',
  { body: members.extend({ act: sentQuestionAct }) },
  async ({ db, person, request, params }) => {
    const id = questionId.safeParse(params.id);
    if (!id.success) return noSuch('question');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await workOnQuestion({ db, now: now(), person, questionId: id.data, act: body.value.act }),
    );
  },
);
