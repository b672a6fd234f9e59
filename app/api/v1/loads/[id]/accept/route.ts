import { z } from 'zod';
import { type Access, endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { type AskedException, acceptLoad } from '@/db/operations/loads/accept-load';
import { listColleagues } from '@/db/queries/people';
import { caseId, packId, placeId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { loadWords } from '@/lib/wording/loads';
import { readLoadRequest, seen } from '../../at-load';

const askedException = z.strictObject({
  caseId,
  packIds: z.array(packId).max(200),
  reason: z.string().max(1000),
  proof: proofBody,
});

const members = z.strictObject({
  ...seen,
  reason: z.string().max(1000),
  setsPlaceId: placeId.nullable(),
  pouchesPlaceId: placeId.nullable(),
  exception: askedException.nullable(),
  proof: proofBody,
});

/** Accepts a load: by a person who proved who they are, and where implants go early by the surgeon too. */
export const POST = endpoint('POST /api/v1/loads/[id]/accept', { body: members }, async (access) => {
  const read = await readLoadRequest(access, members);
  if (!read.ok) return read.response;
  const { reason, setsPlaceId, pouchesPlaceId, proof } = read.body;
  const exception = await provenException(access, read.body.exception);
  if (!exception.ok) return outcomeAnswer(exception);
  const proven = await prove({ access, ...proof, meaning: 'iAcceptThisLoad' });
  if (!proven.ok) return outcomeAnswer(proven);
  // done when it was proven, which takes a moment: never before
  const asked = { ...read.asked, now: proven.value.at, reason, setsPlaceId, pouchesPlaceId };
  return outcomeAnswer(await acceptLoad({ ...asked, exception: exception.value, attestation: proven.value }));
});

async function provenException(
  access: Access,
  asked: z.output<typeof askedException> | null,
): Promise<Outcome<AskedException | null, unknown>> {
  if (asked === null) return { ok: true, value: null };
  const { proof, ...rest } = asked;
  const proven = await prove({ access, ...proof, meaning: 'iApprove' });
  if (!proven.ok) return proven;
  const people = await listColleagues(access.db);
  const surgeon = people.find(({ id }) => id === proven.value.personId);
  if (!surgeon) return refused('notPermitted', loadWords.surgeonNeeded);
  return { ok: true, value: { ...rest, surgeon, attestation: proven.value } };
}
