import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { settleQuestion } from '@/db/operations/theatreCounts/settle-question';
import { findPerson } from '@/db/queries/bench/person';
import { questionId } from '@/lib/identity/ids';
import { settledAs } from '@/lib/theatreCounts/question';

const members = z.strictObject({
  as: settledAs,
  because: z.string().max(2_000),
  proof: proofBody,
  second: proofBody,
});

/** Settles an open question, for which two people stand. */
export const POST = endpoint(
  'POST /api/v1/theatre-questions/[id]/settle',
  { body: members },
  async (access) => {
    const { db, person, request, params } = access;
    const id = questionId.safeParse(params.id);
    if (!id.success) return noSuch('question');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { as, because, proof, second: other } = body.value;
    const attested = await prove({ access, ...proof, meaning: 'iSettleThis' });
    if (!attested.ok) return outcomeAnswer(attested);
    const together = await prove({ access, ...other, meaning: 'iSettleThis' });
    if (!together.ok) return outcomeAnswer(together);
    const second = { attestation: together.value, person: await findPerson(db, together.value.personId) };
    return outcomeAnswer(
      await settleQuestion({
        db,
        now: now(),
        person,
        questionId: id.data,
        as,
        because,
        attestation: attested.value,
        second,
      }),
    );
  },
);
