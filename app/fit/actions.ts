'use server';

import { revalidatePath } from 'next/cache';
import { newId, now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { proofBody, prove } from '@/app/_server/prove';
import { storageSentence } from '@/app/_server/storage-answer';
import type { FieldProblem } from '@/app/_ui/field-problem';
import { approveFitException } from '@/db/operations/approve-fit-exception';
import { approveFitRule } from '@/db/operations/approve-fit-rule';
import { askFitExceptionWithdrawal } from '@/db/operations/ask-fit-exception-withdrawal';
import { askFitRuleWithdrawal } from '@/db/operations/ask-fit-rule-withdrawal';
import { discardFitException } from '@/db/operations/discard-fit-exception';
import { discardFitRule } from '@/db/operations/discard-fit-rule';
import { draftFitException } from '@/db/operations/draft-fit-exception';
import { draftFitRule } from '@/db/operations/draft-fit-rule';
import type { Agreed } from '@/db/operations/fit-lifecycle';
import { keepFitException } from '@/db/operations/keep-fit-exception';
import { keepFitRule } from '@/db/operations/keep-fit-rule';
import { withdrawFitException } from '@/db/operations/withdraw-fit-exception';
import { withdrawFitRule } from '@/db/operations/withdraw-fit-rule';
import type { Result } from '@/lib/identity/result';
import { plainDate } from '@/lib/quantities/plainDate';
import { today } from './_parts/today';

export type Answer = { ok: true; go: string | null } | { ok: false; problems: FieldProblem[] };

function answered<T>(result: Result<T>, go: (value: T) => string | null = () => null): Answer {
  if (!result.ok) {
    return {
      ok: false,
      problems: result.problems.map(({ path, message }) => ({ path: path.join('.'), sentence: message })),
    };
  }
  revalidatePath('/fit', 'layout');
  return { ok: true, go: go(result.value) };
}

const asked = async () => ({ ...(await enter('/fit')), now: now(), today: today() });
const refused = (path: string, sentence: string): Answer => ({ ok: false, problems: [{ path, sentence }] });

/** A store that takes no writes is said in words, at the top of the form. */
async function orWhyNot(write: () => Promise<Answer>): Promise<Answer> {
  try {
    return await write();
  } catch (error) {
    return refused('', storageSentence(error));
  }
}

/** Drafts a rule from what the form holds; `basedOn` is the version it was drafted from, 0 for a new one. */
export async function draftRule(draft: unknown, basedOn: number): Promise<Answer> {
  const request = { ...(await asked()), newId, draft, basedOn: Number.isInteger(basedOn) ? basedOn : 0 };
  return orWhyNot(async () => answered(await draftFitRule(request), ({ code }) => `/fit/rules/${code}`));
}

export async function draftException(draft: unknown): Promise<Answer> {
  const request = { ...(await asked()), newId, draft };
  return orWhyNot(async () =>
    answered(await draftFitException(request), ({ id }) => `/fit/exceptions/${id}`),
  );
}

/**
 * What can be done with a rule or exception that exists. `day` is a date as YYYY-MM-DD, `because` a reason. Approving and
 * agreeing to a withdrawal need a proof of who says so and the trial they saw.
 */
export async function act(
  kind: 'rule' | 'exception',
  id: string,
  step: Step,
  stated: Stated,
): Promise<Answer> {
  return orWhyNot(() => actOn(kind, id, step, stated));
}

type Step = 'approve' | 'discard' | 'askWithdrawal' | 'withdraw' | 'keep';
interface Stated {
  day?: string;
  because?: string;
  proof?: unknown;
  trialId?: string;
}

async function actOn(kind: 'rule' | 'exception', id: string, step: Step, stated: Stated): Promise<Answer> {
  const access = await asked();
  const request = { ...access, id: String(id) };
  const rule = kind === 'rule';
  const agreed = async (): Promise<Agreed | Answer> => {
    const proof = proofBody.safeParse(stated.proof);
    if (!proof.success) return refused('secret', 'Give your password or PIN.');
    const proven = await prove({ access, ...proof.data, meaning: 'iApprove' });
    if (!proven.ok) return refused('secret', proven.refusal.problems.map(({ message }) => message).join(' '));
    return { attestation: proven.value, trialId: String(stated.trialId ?? '') };
  };
  switch (step) {
    case 'approve': {
      const from = plainDate.safeParse(stated.day);
      if (!from.success) return refused('from', 'Write the date as YYYY-MM-DD.');
      const both = await agreed();
      if ('ok' in both) return both;
      const put = { ...request, ...both, now: now(), from: from.data };
      return answered(await (rule ? approveFitRule : approveFitException)(put));
    }
    case 'withdraw': {
      const until = plainDate.safeParse(stated.day);
      if (!until.success) return refused('until', 'Write the date as YYYY-MM-DD.');
      const both = await agreed();
      if ('ok' in both) return both;
      const end = { ...request, ...both, now: now(), until: until.data };
      return answered(await (rule ? withdrawFitRule : withdrawFitException)(end));
    }
    case 'askWithdrawal': {
      const because = String(stated.because ?? '');
      return answered(
        await (rule ? askFitRuleWithdrawal : askFitExceptionWithdrawal)({ ...request, because }),
      );
    }
    case 'discard':
      return answered(await (rule ? discardFitRule : discardFitException)(request), () => '/fit');
    case 'keep':
      return answered(await (rule ? keepFitRule : keepFitException)(request));
    default:
      return refused('', 'There is no such step.');
  }
}
