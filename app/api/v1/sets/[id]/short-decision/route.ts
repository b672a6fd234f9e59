import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { decideShort, shortDecisionEntry } from '@/db/operations/short/decide-short';
import { setId } from '@/lib/identity/ids';
import type { Attestation } from '@/lib/people/attestation';

const approver = z.enum(['decontaminationLead', 'theatreLead', 'operatingSurgeon']);

/** Whoever stands for it proves it here, all in one request; the operation parses the rest. */
const members = z.looseObject({
  proofs: z.array(z.strictObject({ as: approver, proof: proofBody })).max(3),
});

/** Lets a short set go: by everyone the table asks for, together. */
export const POST = endpoint(
  'POST /api/v1/sets/[id]/short-decision',
  { body: shortDecisionEntry.omit({ setId: true }).extend(members.shape) },
  async (access) => {
    const id = setId.safeParse(access.params.id);
    if (!id.success) return noSuch('set');
    const body = await readBody(access.request, members);
    if (!body.ok) return body.response;
    const { proofs, ...entry } = body.value;
    const approvals: { as: z.infer<typeof approver>; attestation: Attestation }[] = [];
    for (const { as, proof } of proofs) {
      const proven = await prove({ access, who: proof.who, secret: proof.secret, meaning: 'iSendItShort' });
      if (!proven.ok) return outcomeAnswer(proven, 200, { as });
      approvals.push({ as, attestation: proven.value });
    }
    const { db, person } = access;
    return outcomeAnswer(
      await decideShort({ db, now: now(), person, entry: { ...entry, setId: id.data }, approvals }),
      201,
    );
  },
);
