import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { liftPouchHold } from '@/db/operations/loads/lift-pouch-hold';
import { packId } from '@/lib/identity/ids';

const members = z.strictObject({ packId, reason: z.string().max(1000), proof: proofBody });

/** Lifts the hold of a pouch whose load was in doubt. */
export const POST = endpoint('POST /api/v1/loads/pouch-holds', { body: members }, async (access) => {
  const body = await readBody(access.request, members);
  if (!body.ok) return body.response;
  const { proof, ...asked } = body.value;
  const proven = await prove({ access, ...proof, meaning: 'iLiftThisHold' });
  if (!proven.ok) return outcomeAnswer(proven);
  const { db, person } = access;
  return outcomeAnswer(await liftPouchHold({ db, now: now(), person, ...asked, attestation: proven.value }));
});
