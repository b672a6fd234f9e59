import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { closeRecall } from '@/db/operations/trace/close-recall';
import { findPerson } from '@/db/queries/bench/person';
import { recallId } from '@/lib/identity/ids';

const members = z.strictObject({
  baseRevision: z.number().int(),
  because: z.string().max(2_000),
  proof: proofBody,
  second: proofBody,
});

/** Closes a recall, for which two people stand. */
export const POST = endpoint('POST /api/v1/recalls/[id]/close', { body: members }, async (access) => {
  const { db, person, request, params } = access;
  const id = recallId.safeParse(params.id);
  if (!id.success) return noSuch('recall');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const { proof, second: other, baseRevision, because } = body.value;
  const attested = await prove({ access, ...proof, meaning: 'iCloseThisRecall' });
  if (!attested.ok) return outcomeAnswer(attested);
  const together = await prove({ access, ...other, meaning: 'iCloseThisRecall' });
  if (!together.ok) return outcomeAnswer(together);
  const second = { attestation: together.value, person: await findPerson(db, together.value.personId) };
  return outcomeAnswer(
    await closeRecall({
      db,
      now: now(),
      person,
      recallId: id.data,
      baseRevision,
      because,
      attestation: attested.value,
      second,
    }),
  );
});
