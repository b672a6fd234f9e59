import {
  asSentence,
  conditionWords,
  missingSentence,
  NO_RULE_SENTENCE,
  writeFactValue,
} from '../wording/fit';
import { type Compiled, compileCondition, type Given, namedIn, type Scope } from './condition';
import type { DeclaredFact } from './facts';
import { FACTS, type FactValue, PARTICIPANTS } from './facts';
import type { FactSeen, Finding } from './finding';
import { itemPairOf } from './pair';
import type { Outcome, Question, Verdict } from './question';
import type { FitException, FitRule, FitSettings, Relation, Severity } from './rule';

/** Rules made ready to answer questions. Pure: the same question always gets the same answer. */
export interface FitEngine {
  /** In the order their findings come in: what stops first, then by code. */
  readonly rules: readonly FitRule[];
  readonly exceptions: readonly FitException[];
  readonly settings: FitSettings;
  ask(question: Question): Verdict;
}

interface CompiledRule {
  rule: FitRule;
  /** Optional participants without which the rule says nothing. */
  needs: number[];
  applies: Compiled;
  requires: Compiled;
  /** Indexes of the facts it looks at. */
  facts: number[];
  metSentence: string;
  brokenSentence: (values: readonly FactValue[]) => string;
}

interface CompiledRelation {
  participants: { name: string; of: (question: Question) => unknown }[];
  facts: { declared: DeclaredFact; participant: number }[];
  rules: CompiledRule[];
}

const SEVERITY_ORDER: Record<Severity, number> = { stops: 0, caution: 1, note: 2 };

/**
 * Makes an engine of the rules and exceptions given. All of them count: hand in those in force (or, to try
 * a change, those that would be). The order they come in never matters.
 *
 * How a question is answered:
 * - A rule does not apply when its `appliesWhen` is no, or when it looks at an optional participant that takes
 *   no part in the question and does not itself say what `takesPart`.
 * - A rule is *met* when it applies and what it requires holds, *not met* when it applies and that does not
 *   hold, and *missing* when facts not stated keep either from being known. A requirement that holds is met
 *   even while it is unknown whether the rule applies.
 * - The verdict: any stop not met → does not fit; else any stop missing → not established; else fits.
 *   Cautions and notes are listed and do not decide, but a caution that is all there is and is missing leaves
 *   the answer not established.
 * - No rule that stops or cautions surely applies → not established, from `noRule`: silence is no fit.
 * - An exception for the two designs outranks every rule that stops and disagrees with it; those findings stay,
 *   marked. Should a pair be both allowed and denied, it is denied.
 *
 * Stating a missing value can settle `notEstablished`, and never turns one settled answer into the other.
 * Throws on a rule that names a fact, participant or setting that does not exist (see check-rule.ts).
 */
export function createFitEngine(given: {
  rules: readonly FitRule[];
  exceptions: readonly FitException[];
  settings: FitSettings;
}): FitEngine {
  const rules = [...given.rules].sort(inOrder);
  const relations = new Map<Relation, CompiledRelation>();
  for (const relation of new Set(rules.map((rule) => rule.relation))) {
    const own = rules.filter((rule) => rule.relation === relation);
    relations.set(relation, compileRelation(relation, own, given.settings));
  }
  const exceptions = new Map<string, FitException>();
  for (const exception of given.exceptions) {
    const key = pairKey(exception.relation, exception.firstItemId, exception.secondItemId);
    const before = exceptions.get(key);
    if (!before || exception.answer === 'deny') exceptions.set(key, exception);
  }
  return {
    rules,
    exceptions: [...given.exceptions],
    settings: given.settings,
    ask(question) {
      const relation = relations.get(question.relation);
      const { findings, governedBy } = relation ? ask(relation, question) : NOTHING_SAID;
      const exception = exceptions.size > 0 ? exceptionFor(exceptions, question) : undefined;
      if (exception) return outranked(question, findings, exception);
      if (governedBy === null && !findings.some(blocks)) {
        return { relation: question.relation, outcome: 'notEstablished', findings: [noRule(), ...findings] };
      }
      return { relation: question.relation, outcome: decide(findings, governedBy), findings };
    },
  };
}

function inOrder(a: FitRule, b: FitRule): number {
  const bySeverity = SEVERITY_ORDER[a.severity] - SEVERITY_ORDER[b.severity];
  if (bySeverity !== 0) return bySeverity;
  if (a.code !== b.code) return a.code < b.code ? -1 : 1;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : a.version - b.version;
}

function compileRelation(relation: Relation, rules: FitRule[], settings: FitSettings): CompiledRelation {
  const participants = Object.entries(PARTICIPANTS[relation]).map(([name, { of }]) => ({ name, of }));
  const facts: CompiledRelation['facts'] = [];
  const indexes = new Map<string, number>();
  const scope: Scope = {
    settings,
    participant(name) {
      const index = participants.findIndex((one) => one.name === name);
      if (index < 0) throw new Error(`${relation} has no participant ${name}`);
      return index;
    },
    fact(name) {
      const known = indexes.get(name);
      if (known !== undefined) return known;
      const declared = FACTS[relation].get(name);
      if (!declared) throw new Error(`${relation} has no fact ${name}`);
      indexes.set(name, facts.length);
      return facts.push({ declared, participant: scope.participant(declared.participant) }) - 1;
    },
  };
  return { participants, facts, rules: rules.map((rule) => compileRule(rule, scope, facts)) };
}

function compileRule(rule: FitRule, scope: Scope, facts: CompiledRelation['facts']): CompiledRule {
  const named = namedIn({ all: [rule.appliesWhen, rule.requires] });
  const optional = Object.entries(PARTICIPANTS[rule.relation]).filter(([, { optional }]) => optional);
  const needs = optional
    .filter(
      ([name]) => !named.takesPart.includes(name) && named.facts.some((fact) => fact.startsWith(`${name}.`)),
    )
    .map(([name]) => scope.participant(name));
  return {
    rule,
    needs,
    applies: compileCondition(rule.appliesWhen, scope),
    requires: compileCondition(rule.requires, scope),
    facts: named.facts.map((name) => scope.fact(name)),
    metSentence: asSentence(conditionWords(rule.relation, rule.requires)),
    brokenSentence: compileSentence(rule, scope, facts),
  };
}

/** Replaces each `{participant.fact}` by the value with its unit. */
function compileSentence(
  rule: FitRule,
  scope: Scope,
  facts: CompiledRelation['facts'],
): CompiledRule['brokenSentence'] {
  const parts = rule.sentence
    .split(/\{([^{}]*)\}/)
    .map((part, position) => (position % 2 ? scope.fact(part) : part));
  if (parts.length === 1) return () => rule.sentence;
  return (values) => {
    let sentence = '';
    for (const part of parts) {
      sentence += typeof part === 'string' ? part : written(facts[part], values[part] ?? null);
    }
    return sentence;
  };
}

const written = (fact: CompiledRelation['facts'][number] | undefined, value: FactValue) =>
  writeFactValue(fact?.declared.unit ?? 'text', value);

/** What the rules say, and the gravest severity among those that surely apply; notes govern nothing. */
interface Said {
  findings: Finding[];
  governedBy: 'stops' | 'caution' | null;
}
const NOTHING_SAID: Said = { findings: [], governedBy: null };

function ask({ participants, facts, rules }: CompiledRelation, question: Question): Said {
  const who = participants.map(({ of }) => of(question));
  const values = facts.map(({ declared, participant }) => {
    const subject = who[participant];
    return subject == null ? null : declared.read(subject);
  });
  const given: Given = { values, present: who.map((one) => one != null), missing: [] };
  const findings: Finding[] = [];
  let governedBy: Said['governedBy'] = null;
  for (const compiled of rules) {
    if (compiled.needs.some((index) => !given.present[index])) continue;
    given.missing.length = 0;
    const applies = compiled.applies(given);
    if (applies === false) continue;
    if (applies && compiled.rule.severity !== 'note') governedBy ??= compiled.rule.severity;
    const beforeRequires = given.missing.length;
    const holds = compiled.requires(given);
    if (holds) given.missing.length = 0;
    else if (holds === false) given.missing.length = beforeRequires;
    const answer = holds ? 'met' : holds === false && applies ? 'notMet' : 'missing';
    findings.push(finding(compiled, answer, facts, given));
  }
  return { findings, governedBy };
}

function finding(
  { rule, facts: indexes, metSentence, brokenSentence }: CompiledRule,
  answer: Finding['answer'],
  facts: CompiledRelation['facts'],
  { values, missing }: Given,
): Finding {
  const missingNames =
    answer === 'missing' ? [...new Set(missing.map((index) => facts[index]?.declared.statedAs ?? ''))] : [];
  return {
    from: { kind: 'rule', id: rule.id, code: rule.code },
    answer,
    severity: rule.severity,
    sentence:
      answer === 'met'
        ? metSentence
        : answer === 'notMet'
          ? brokenSentence(values)
          : missingSentence(rule.relation, missingNames),
    source: rule.source,
    seen: indexes.map((index) => seen(facts[index], values[index] ?? null)),
    missing: missingNames,
    outranked: false,
  };
}

function seen(fact: CompiledRelation['facts'][number] | undefined, value: FactValue): FactSeen {
  const plain = value !== null && typeof value === 'object' ? written(fact, value) : value;
  return { fact: fact?.declared.name ?? '', value: plain };
}

const blocks = ({ severity, answer }: Finding) => severity === 'stops' && answer !== 'met';

function decide(findings: Finding[], governedBy: Said['governedBy']): Outcome {
  const stops = findings.filter(({ severity }) => severity === 'stops');
  if (stops.some(({ answer }) => answer === 'notMet')) return 'doesNotFit';
  const decisive = governedBy === 'stops' ? stops : findings.filter(({ severity }) => severity !== 'note');
  return decisive.some(({ answer }) => answer === 'missing') ? 'notEstablished' : 'fits';
}

function noRule(): Finding {
  return {
    from: { kind: 'noRule' },
    answer: 'missing',
    severity: 'stops',
    sentence: NO_RULE_SENTENCE,
    source: null,
    seen: [],
    missing: [],
    outranked: false,
  };
}

const pairKey = (relation: Relation, a: string, b: string) =>
  a < b ? `${relation} ${a} ${b}` : `${relation} ${b} ${a}`;

function exceptionFor(
  exceptions: ReadonlyMap<string, FitException>,
  question: Question,
): FitException | undefined {
  const pair = itemPairOf(question);
  return pair ? exceptions.get(pairKey(question.relation, pair[0].id, pair[1].id)) : undefined;
}

function outranked(question: Question, findings: Finding[], exception: FitException): Verdict {
  const allow = exception.answer === 'allow';
  const named: Finding = {
    from: { kind: 'exception', id: exception.id },
    answer: allow ? 'met' : 'notMet',
    severity: 'stops',
    sentence: exception.sentence,
    source: exception.source,
    seen: [],
    missing: [],
    outranked: false,
  };
  const rest = findings.map((one) => ({
    ...one,
    outranked: one.severity === 'stops' && (allow ? one.answer !== 'met' : one.answer !== 'notMet'),
  }));
  return { relation: question.relation, outcome: allow ? 'fits' : 'doesNotFit', findings: [named, ...rest] };
}
