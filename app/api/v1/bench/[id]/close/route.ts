import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { closeCount } from '@/db/operations/bench/close-count';
import { findPerson } from '@/db/queries/bench/person';
import { countId, entryId } from '@/lib/identity/ids';

const members = z.strictObject({
  entryIds: z.array(entryId).max(5_000),
  /** What this person says: a count is counted, a second check is checked. */
  meaning: z.enum(['iCounted', 'iChecked']),
  proof: proofBody,
  second: proofBody.optional(),
});

/** Closes a count: nothing of it may be pending, and whoever closes it proves who they are. */
export const POST = endpoint('POST /api/v1/bench/[id]/close', { body: members }, async (access) => {
  const { db, person, request, params } = access;
  const id = countId.safeParse(params.id);
  if (!id.success) return noSuch('count');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const { entryIds, meaning, proof, second: other } = body.value;
  const attested = await prove({ access, ...proof, meaning });
  if (!attested.ok) return outcomeAnswer(attested);
  const together = other ? await prove({ access, ...other, meaning: 'iChecked' }) : null;
  if (together && !together.ok) return outcomeAnswer(together);
  const second = together
    ? { attestation: together.value, person: await findPerson(db, together.value.personId) }
    : null;
  const attestation = attested.value;
  return outcomeAnswer(
    await closeCount({ db, now: now(), newId, person, countId: id.data, entryIds, attestation, second }),
  );
});
