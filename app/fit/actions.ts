'use server';

import { revalidatePath } from 'next/cache';
import { newId, now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { actOnFit, type FitStep } from '@/app/_server/fit/act-on-fit';
import { proofBody } from '@/app/_server/prove';
import { storageSentence } from '@/app/_server/storage-answer';
import type { FieldProblem } from '@/app/_ui/field-problem';
import { draftFitException } from '@/db/operations/draft-fit-exception';
import { draftFitRule } from '@/db/operations/draft-fit-rule';
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

type Step = FitStep['step'];
interface Stated {
  day?: string;
  because?: string;
  proof?: unknown;
  trialId?: string;
}

async function actOn(kind: 'rule' | 'exception', id: string, step: Step, stated: Stated): Promise<Answer> {
  const access = await enter('/fit');
  const proof = proofBody.safeParse(stated.proof);
  const trialId = String(stated.trialId ?? '');
  const done = async (asked: FitStep, go: string | null = null) =>
    answered(await actOnFit(access, kind, String(id), asked), () => go);
  switch (step) {
    case 'approve': {
      const from = plainDate.safeParse(stated.day);
      if (!from.success) return refused('from', 'Write the date as YYYY-MM-DD.');
      if (!proof.success) return noSecret();
      return done({ step, from: from.data, proof: proof.data, trialId });
    }
    case 'withdraw': {
      const until = plainDate.safeParse(stated.day);
      if (!until.success) return refused('until', 'Write the date as YYYY-MM-DD.');
      if (!proof.success) return noSecret();
      return done({ step, until: until.data, proof: proof.data, trialId });
    }
    case 'askWithdrawal':
      return done({ step, because: String(stated.because ?? '') });
    case 'discard':
      return done({ step }, '/fit');
    case 'keep':
      return done({ step });
    default:
      return refused('', 'There is no such step.');
  }
}

const noSecret = () => refused('secret', 'Give your password or PIN.');
