'use server';

import { enter } from '@/app/_server/enter';
import { type Tried, tryFitRule } from '@/app/_server/fit/try-fit-rule';
import type { FieldProblem } from '@/app/_ui/field-problem';

/** Tries a rule that is not even drafted against the whole catalogue. Nothing is kept. */
export async function tryRule(
  raw: unknown,
): Promise<{ ok: true; tried: Tried } | { ok: false; problems: FieldProblem[] }> {
  const { db } = await enter('/fit/rules/new');
  const tried = await tryFitRule(db, raw);
  if (tried.ok) return { ok: true, tried: tried.value };
  return {
    ok: false,
    problems: tried.problems.map(({ path, message }) => ({ path: path.join('.'), sentence: message })),
  };
}
