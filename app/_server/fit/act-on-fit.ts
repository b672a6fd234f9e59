import 'server-only';
import { z } from 'zod';
import { approveFitException } from '@/db/operations/approve-fit-exception';
import { approveFitRule } from '@/db/operations/approve-fit-rule';
import { askFitExceptionWithdrawal } from '@/db/operations/ask-fit-exception-withdrawal';
import { askFitRuleWithdrawal } from '@/db/operations/ask-fit-rule-withdrawal';
import { discardFitException } from '@/db/operations/discard-fit-exception';
import { discardFitRule } from '@/db/operations/discard-fit-rule';
import type { Agreed } from '@/db/operations/fit-lifecycle';
import { keepFitException } from '@/db/operations/keep-fit-exception';
import { keepFitRule } from '@/db/operations/keep-fit-rule';
import { withdrawFitException } from '@/db/operations/withdraw-fit-exception';
import { withdrawFitRule } from '@/db/operations/withdraw-fit-rule';
import { failed, ok, type Result } from '@/lib/identity/result';
import { plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { now } from '../clock';
import { proofBody, prove } from '../prove';
import type { Access } from '../session';

const agreed = {
  /** Who agrees, proved again. */
  proof: proofBody,
  /** The trial of the change that they saw. */
  trialId: z.string().max(80),
};

/** What can be done with a fit rule or an exception that exists. */
export const fitStep = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('approve'), from: plainDate, ...agreed }),
  z.strictObject({ step: z.literal('askWithdrawal'), because: z.string().max(2_000) }),
  z.strictObject({ step: z.literal('withdraw'), until: plainDate, ...agreed }),
  z.strictObject({ step: z.literal('keep') }),
  z.strictObject({ step: z.literal('discard') }),
]);
export type FitStep = z.infer<typeof fitStep>;

/** Does it, as a screen or another system asks for it; approving and agreeing to a withdrawal prove first who says so. */
export async function actOnFit(
  access: Access,
  kind: 'rule' | 'exception',
  id: string,
  asked: FitStep,
): Promise<Result<{ id: string; step: FitStep['step'] }>> {
  const done = await doneWith(access, kind, id, asked);
  return done.ok ? ok({ id, step: asked.step }) : done;
}

async function doneWith(
  access: Access,
  kind: 'rule' | 'exception',
  id: string,
  asked: FitStep,
): Promise<Result<unknown>> {
  const { db, person } = access;
  const request = () => ({ db, person, id, now: now(), today: wallClock(now()).date });
  const rule = kind === 'rule';
  switch (asked.step) {
    case 'approve': {
      const both = await provenBy(access, asked);
      if (!both.ok) return both;
      const put = { ...request(), ...both.value, from: asked.from };
      return (rule ? approveFitRule : approveFitException)(put);
    }
    case 'withdraw': {
      const both = await provenBy(access, asked);
      if (!both.ok) return both;
      const end = { ...request(), ...both.value, until: asked.until };
      return (rule ? withdrawFitRule : withdrawFitException)(end);
    }
    case 'askWithdrawal': {
      const ask = { ...request(), because: asked.because };
      return (rule ? askFitRuleWithdrawal : askFitExceptionWithdrawal)(ask);
    }
    case 'discard':
      return (rule ? discardFitRule : discardFitException)(request());
    case 'keep':
      return (rule ? keepFitRule : keepFitException)(request());
  }
}

async function provenBy(
  access: Access,
  { proof, trialId }: Pick<Extract<FitStep, { step: 'approve' }>, 'proof' | 'trialId'>,
): Promise<Result<Agreed>> {
  const proven = await prove({ access, ...proof, meaning: 'iApprove' });
  if (!proven.ok) return failed(...proven.refusal.problems);
  return ok({ attestation: proven.value, trialId });
}
