import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { closeEmergencyQuestion } from '@/db/operations/emergency/close-question';
import { caseId, openQuestionId } from '@/lib/identity/ids';

const members = z.strictObject({ questionId: openQuestionId });

/** Closes what an emergency left open. */
export const POST = endpoint(
  'POST /api/v1/emergency/[id]/close',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = caseId.safeParse(params.id);
    if (!id.success) return noSuch('emergency');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await closeEmergencyQuestion({ db, now: now(), person, caseId: id.data, ...body.value }),
    );
  },
);
