import type { Condition, FitRule, Relation, Severity, Source, Term } from '@/lib/fit/rule';
import { fitRule } from '@/lib/fit/rule';

/** The day from which the rules the program starts with are in force. */
const FROM = '2025-01-01';

export const standard = (number: string, clause: string | null = null): Source => ({
  kind: 'standard',
  number,
  clause,
});
export const commonPractice: Source = { kind: 'commonPractice' };

/** A fact of a participant, `screw.threadUm`. */
export const of = (fact: string): Term => ({ fact });
export const is = (fact: string, value: string | number | boolean): Condition => ({
  equal: [{ fact }, { value }],
});
export const same = (a: string, b: string): Condition => ({ equal: [{ fact: a }, { fact: b }] });
export const among = (fact: string, ...values: (string | number)[]): Condition => ({
  oneOf: [{ fact }, values],
});
export const below = (a: Term, b: Term): Condition => ({ below: [a, b] });
export const atMost = (a: Term, b: Term): Condition => ({ atMost: [a, b] });
export const lists = (list: string, one: string): Condition => ({ lists: [{ fact: list }, { fact: one }] });
export const all = (...parts: Condition[]): Condition => ({ all: parts });
export const any = (...parts: Condition[]): Condition => ({ any: parts });
export const not = (part: Condition): Condition => ({ not: part });
export const ALWAYS: Condition = { all: [] };

/** One rule of the starter set: what differs from rule to rule; the rest is the same for all. */
export interface Starter {
  code: string;
  severity?: Severity;
  when?: Condition;
  requires: Condition;
  sentence: string;
  source?: Source;
}

/** Starter rules of one relation. They come with the program: drafted and approved by nobody. */
export function rulesOf(relation: Relation, starters: Starter[]): FitRule[] {
  return starters.map((starter) =>
    fitRule.parse({
      id: `rule_${starter.code}`,
      code: starter.code,
      relation,
      appliesWhen: starter.when ?? ALWAYS,
      requires: starter.requires,
      severity: starter.severity ?? 'stops',
      sentence: starter.sentence,
      source: starter.source ?? commonPractice,
      status: 'inForce',
      draftedBy: null,
      approvedBy: null,
      inForceFrom: FROM,
      inForceUntil: null,
      withdrawalAskedBy: null,
      withdrawnBy: null,
      version: 1,
    }),
  );
}
