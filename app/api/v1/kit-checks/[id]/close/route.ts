import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { closeCheck } from '@/db/operations/caseLife/close-check';
import { checkId, entryId } from '@/lib/identity/ids';

const members = z.strictObject({ entryIds: z.array(entryId).max(2_000), proof: proofBody });

/** Closes a check: whoever made it proves who they are, and learns where it differs from what was picked. */
export const POST = endpoint('POST /api/v1/kit-checks/[id]/close', { body: members }, async (access) => {
  const { db, person, request, params } = access;
  const id = checkId.safeParse(params.id);
  if (!id.success) return noSuch('check');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const { entryIds, proof } = body.value;
  const attested = await prove({ access, ...proof, meaning: 'iChecked' });
  if (!attested.ok) return outcomeAnswer(attested);
  return outcomeAnswer(
    await closeCheck({ db, now: now(), person, checkId: id.data, entryIds, attestation: attested.value }),
  );
});
