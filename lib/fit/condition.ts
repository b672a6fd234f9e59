import type { FactValue } from './facts';
import type { Condition, FitSettings, Term } from './rule';

/** Yes, no, or `null` for unknown: Kleene's three-valued logic. */
export type Truth = boolean | null;

/** What one question gives the conditions of its relation. */
export interface Given {
  /** By the index the scope gave out. `null` is not stated. */
  values: FactValue[];
  /** By the index the scope gave out: whether the participant takes part. */
  present: boolean[];
  /** Indexes of facts that are missing and matter; a part that turns out not to matter takes its own back. */
  missing: number[];
}

/** Gives each fact and participant of a relation's rules its place in `Given`. */
export interface Scope {
  fact(name: string): number;
  participant(name: string): number;
  settings: FitSettings;
}

export type Compiled = (given: Given) => Truth;
type CompiledTerm = (given: Given) => FactValue;

/**
 * Turns a condition into a function that answers it for one question. A `no` in `all`, or a `yes` in
 * `any`, settles the answer whatever else is unknown, so the facts missing beside it are not reported.
 * Throws on a fact, participant or setting that does not exist: rules are checked before they are kept.
 */
export function compileCondition(condition: Condition, scope: Scope): Compiled {
  if ('all' in condition)
    return settledBy(
      false,
      condition.all.map((part) => compileCondition(part, scope)),
    );
  if ('any' in condition)
    return settledBy(
      true,
      condition.any.map((part) => compileCondition(part, scope)),
    );
  if ('not' in condition) {
    const part = compileCondition(condition.not, scope);
    return (given) => {
      const truth = part(given);
      return truth === null ? null : !truth;
    };
  }
  if ('takesPart' in condition) {
    const index = scope.participant(condition.takesPart);
    return (given) => given.present[index] === true;
  }
  if ('equal' in condition) return compared(condition.equal, scope, (a, b) => a === b);
  if ('below' in condition) return compared(condition.below, scope, (a, b) => (a as number) < (b as number));
  if ('atMost' in condition)
    return compared(condition.atMost, scope, (a, b) => (a as number) <= (b as number));
  if ('oneOf' in condition) {
    const [subject, constants] = condition.oneOf;
    const value = compileTerm(subject, scope);
    const set = new Set<FactValue>(constants);
    return (given) => {
      const seen = value(given);
      return seen === null ? null : set.has(seen);
    };
  }
  const [list, one] = condition.lists.map((part) => compileTerm(part, scope)) as [CompiledTerm, CompiledTerm];
  return (given) => {
    const mark = given.missing.length;
    const within = list(given);
    if (Array.isArray(within) && within.length === 0) {
      given.missing.length = mark;
      return false;
    }
    const sought = one(given);
    return within === null || sought === null ? null : (within as readonly FactValue[]).includes(sought);
  };
}

/** `all` is settled by the first `false`, `any` by the first `true`. Empty `all` is true, empty `any` is false. */
function settledBy(settling: boolean, parts: Compiled[]): Compiled {
  return (given) => {
    const mark = given.missing.length;
    let unknown = false;
    for (const part of parts) {
      const truth = part(given);
      if (truth === settling) {
        given.missing.length = mark;
        return settling;
      }
      if (truth === null) unknown = true;
    }
    return unknown ? null : !settling;
  };
}

function compared(
  terms: [Term, Term],
  scope: Scope,
  test: (a: FactValue, b: FactValue) => boolean,
): Compiled {
  const [left, right] = terms.map((one) => compileTerm(one, scope)) as [CompiledTerm, CompiledTerm];
  return (given) => {
    const a = left(given);
    const b = right(given);
    return a === null || b === null ? null : test(a, b);
  };
}

function compileTerm(term: Term, scope: Scope): CompiledTerm {
  if ('value' in term) return () => term.value;
  if ('setting' in term) {
    const value = scope.settings[term.setting as keyof FitSettings];
    if (value === undefined) throw new Error(`no such setting: ${term.setting}`);
    return () => value;
  }
  if ('fact' in term) {
    const index = scope.fact(term.fact);
    return (given) => {
      const value = given.values[index] ?? null;
      if (value === null && !given.missing.includes(index)) given.missing.push(index);
      return value;
    };
  }
  const sign = 'plus' in term ? 1 : -1;
  const [left, right] = ('plus' in term ? term.plus : term.minus).map((one) => compileTerm(one, scope)) as [
    CompiledTerm,
    CompiledTerm,
  ];
  return (given) => {
    const a = left(given);
    const b = right(given);
    return a === null || b === null ? null : (a as number) + sign * (b as number);
  };
}

/** Every fact and every participant a condition names, in the order they are first named. */
export function namedIn(condition: Condition): { facts: string[]; takesPart: string[] } {
  const facts = new Set<string>();
  const takesPart = new Set<string>();
  const ofTerm = (term: Term): void => {
    if ('fact' in term) facts.add(term.fact);
    else if ('plus' in term) term.plus.forEach(ofTerm);
    else if ('minus' in term) term.minus.forEach(ofTerm);
  };
  const of = (part: Condition): void => {
    if ('all' in part) part.all.forEach(of);
    else if ('any' in part) part.any.forEach(of);
    else if ('not' in part) of(part.not);
    else if ('takesPart' in part) takesPart.add(part.takesPart);
    else if ('oneOf' in part) ofTerm(part.oneOf[0]);
    else if ('equal' in part) part.equal.forEach(ofTerm);
    else if ('below' in part) part.below.forEach(ofTerm);
    else if ('atMost' in part) part.atMost.forEach(ofTerm);
    else part.lists.forEach(ofTerm);
  };
  of(condition);
  return { facts: [...facts], takesPart: [...takesPart] };
}
