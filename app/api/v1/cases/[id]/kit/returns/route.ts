import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { oneOf } from '@/app/api/v1/_reading/one';
import { returnThing, sentReturn } from '@/db/operations/caseLife/return-thing';
import { backScreen } from '@/db/queries/caseLife/backScreen';
import { caseId } from '@/lib/identity/ids';

const members = z.strictObject({ returned: z.looseObject({}), proof: proofBody.optional() });

/** What became of something that was issued; what comes back unopened takes a proof of whoever looked at its barrier. */
export const POST = endpoint(
  'POST /api/v1/cases/[id]/kit/returns',
  { body: members.extend({ returned: sentReturn }) },
  async (access) => {
    const { db, person, request, params } = access;
    const id = caseId.safeParse(params.id);
    if (!id.success) return noSuch('case');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { returned, proof } = body.value;
    const attested = proof ? await prove({ access, ...proof, meaning: 'iLookedAtTheBarrier' }) : null;
    if (attested && !attested.ok) return outcomeAnswer(attested);
    const attestation = attested?.value ?? null;
    return outcomeAnswer(
      await returnThing({ db, now: now(), newId, person, caseId: id.data, returned, attestation }),
    );
  },
);

/** What is out for a case and has to be accounted for. */
export const GET = oneOf('GET /api/v1/cases/[id]/kit/returns', { what: 'case' }, ({ db, params }) =>
  backScreen(db, params.id),
);
