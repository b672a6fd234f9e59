import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { closeUse } from '@/db/operations/usage/close-use';
import { caseId, entryId } from '@/lib/identity/ids';

const members = z.strictObject({
  entryIds: z.array(entryId).max(5_000),
  /** What stays open, as it was shown. */
  questions: z.array(z.string().max(400)).max(1_000),
  proof: proofBody,
});

/** Closes the record of use of a case: whoever recorded it proves who they are. */
export const POST = endpoint('POST /api/v1/cases/[id]/use/close', { body: members }, async (access) => {
  const { db, person, request, params } = access;
  const id = caseId.safeParse(params.id);
  if (!id.success) return noSuch('case');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const { proof, ...rest } = body.value;
  const attested = await prove({ access, ...proof, meaning: 'iRecordedThis' });
  if (!attested.ok) return outcomeAnswer(attested);
  const attestation = attested.value;
  return outcomeAnswer(
    await closeUse({ db, now: now(), newId, person, caseId: id.data, attestation, ...rest }),
  );
});
