import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { proofBody, prove } from '@/app/_server/prove';
import { liftHold } from '@/db/operations/turns/lift-hold';
import { turnStep } from '@/lib/sets/setState';
import { actOnSet, setMembers } from '../set-request';

const members = z.strictObject({
  ...setMembers,
  to: z.enum(turnStep.options, 'choose where it goes'),
  reason: z.string('say why'),
  proof: proofBody,
});

/** Lifts the hold of a set: the person proves again who they are, and says so. */
export const POST = endpoint('POST /api/v1/sets/[id]/lift-hold', { body: members }, (asked) =>
  actOnSet(
    asked,
    members,
    async (request, { to, reason, proof }, access) => {
      const proven = await prove({ access, who: 'me', secret: proof.secret, meaning: 'iLiftThisHold' });
      if (!proven.ok) return { ok: false, refusal: { ...proven.refusal, current: null } };
      return liftHold({ ...request, now: proven.value.at, to, reason, attestation: proven.value });
    },
    'lift-hold',
  ),
);
