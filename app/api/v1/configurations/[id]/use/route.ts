import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { askConfigurationWithdrawal } from '@/db/operations/configurations/ask-withdrawal';
import { decideConfigurationWithdrawal } from '@/db/operations/configurations/decide-withdrawal';
import { configurationId } from '@/lib/identity/ids';

const members = z.discriminatedUnion('step', [
  z.strictObject({
    step: z.literal('ask'),
    kind: z.enum(['withdraw', 'bringBack']),
    because: z.string().max(1000),
  }),
  z.strictObject({ step: z.literal('agree'), proof: proofBody }),
  z.strictObject({ step: z.literal('turnDown') }),
]);

/** A configuration goes out of use, or comes back: asked by one person, agreed or turned down by another. */
export const POST = endpoint('POST /api/v1/configurations/[id]/use', { body: members }, async (access) => {
  const { db, person, params } = access;
  const id = configurationId.safeParse(params.id);
  if (!id.success) return noSuch('configuration');
  const body = await readBody(access.request, members);
  if (!body.ok) return body.response;
  const asked = body.value;
  const request = { db, person, configurationId: id.data };
  if (asked.step === 'ask') {
    const { kind, because } = asked;
    return outcomeAnswer(
      await askConfigurationWithdrawal({ ...request, now: now(), newId, kind, because }),
      201,
    );
  }
  if (asked.step === 'turnDown')
    return outcomeAnswer(
      await decideConfigurationWithdrawal({ ...request, now: now(), decision: { agreed: false } }),
    );
  const proven = await prove({ access, ...asked.proof, meaning: 'iApprove' });
  if (!proven.ok) return outcomeAnswer(proven);
  const decision = { agreed: true as const, attestation: proven.value };
  return outcomeAnswer(await decideConfigurationWithdrawal({ ...request, now: now(), decision }));
});
