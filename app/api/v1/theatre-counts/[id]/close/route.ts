import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { closeTheatreCount } from '@/db/operations/theatreCounts/close-theatre-count';
import { findPerson } from '@/db/queries/bench/person';
import { entryId, theatreCountId } from '@/lib/identity/ids';

const members = z.strictObject({
  entryIds: z.array(entryId).max(5_000),
  proof: proofBody,
  /** The other person who counted. */
  second: proofBody,
});

/** Closes a count in theatre: both people prove who they are. */
export const POST = endpoint('POST /api/v1/theatre-counts/[id]/close', { body: members }, async (access) => {
  const { db, person, request, params } = access;
  const id = theatreCountId.safeParse(params.id);
  if (!id.success) return noSuch('count');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const { entryIds, proof, second: other } = body.value;
  const attested = await prove({ access, ...proof, meaning: 'iCounted' });
  if (!attested.ok) return outcomeAnswer(attested);
  const together = await prove({ access, ...other, meaning: 'iCounted' });
  if (!together.ok) return outcomeAnswer(together);
  const second = { attestation: together.value, person: await findPerson(db, together.value.personId) };
  const attestation = attested.value;
  return outcomeAnswer(
    await closeTheatreCount({
      db,
      now: now(),
      newId,
      person,
      countId: id.data,
      entryIds,
      attestation,
      second,
    }),
  );
});
