import { z } from 'zod';
import { failed, ok, type Problem, problemsFromZod, type Result } from '../identity/result';
import { checkRule } from './check-rule';
import { parseCondition } from './parse-condition';
import { type Condition, type FitException, type FitRule, fitException, fitRule } from './rule';

const shape = fitRule.shape;

/** What a person states when drafting a rule; the rest comes from who and when. */
export type RuleDraft = Pick<
  FitRule,
  'code' | 'relation' | 'appliesWhen' | 'requires' | 'severity' | 'sentence' | 'source'
>;

const plainPart = z.object({
  code: shape.code,
  relation: shape.relation,
  severity: shape.severity,
  sentence: shape.sentence,
  source: shape.source,
});

/** Reads a draft from anything. All problems at once, each with its path. */
export function parseRuleDraft(raw: unknown): Result<RuleDraft> {
  if (raw === null || typeof raw !== 'object') {
    return failed({
      path: [],
      code: 'not-a-rule',
      message: 'a rule is needed: its code, relation, condition, sentence and source',
    });
  }
  const given = raw as Record<string, unknown>;
  const problems: Problem[] = [];
  const plain = plainPart.safeParse(given);
  if (!plain.success) problems.push(...problemsFromZod(plain.error));
  const shapeProblems = problems.length;
  const appliesWhen = parseCondition(given.appliesWhen ?? { all: [] }, ['appliesWhen'], problems);
  const requires = parseCondition(given.requires, ['requires'], problems);
  const relation = shape.relation.safeParse(given.relation);
  if (relation.success && problems.length === shapeProblems) {
    const sentence = typeof given.sentence === 'string' ? given.sentence : '';
    problems.push(...checkRule({ relation: relation.data, appliesWhen, requires, sentence }));
  }
  if (problems.length > 0 || !plain.success) return failed(...problems);
  return ok({ ...plain.data, appliesWhen: appliesWhen as Condition, requires: requires as Condition });
}

export type ExceptionDraft = Pick<
  FitException,
  'relation' | 'firstItemId' | 'secondItemId' | 'answer' | 'sentence' | 'source'
>;

export const exceptionPart = z
  .object({
    relation: fitException.shape.relation,
    firstItemId: fitException.shape.firstItemId,
    secondItemId: fitException.shape.secondItemId,
    answer: fitException.shape.answer,
    sentence: fitException.shape.sentence,
    source: fitException.shape.source,
  })
  .refine((draft) => draft.firstItemId !== draft.secondItemId, {
    path: ['secondItemId'],
    message: 'an exception is for two designs: choose another second one',
  })
  .refine((draft) => draft.relation !== 'sides', {
    path: ['relation'],
    message: 'sides relates a plate and a limb, not two designs: change the plate’s entry instead',
  });

/** Reads a drafted exception from anything. All problems at once, each with its path. */
export function parseExceptionDraft(raw: unknown): Result<ExceptionDraft> {
  const parsed = exceptionPart.safeParse(raw);
  return parsed.success ? ok(parsed.data) : failed(...problemsFromZod(parsed.error));
}
