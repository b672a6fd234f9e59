import { type DeclaredFact, FACTS, type FactUnit, type FactValue } from '../fit/facts';
import type { Condition, FitSettings, Relation, Source, Term } from '../fit/rule';
import { writeMm } from '../quantities/length';
import { CHOICE_WORDS, FACT_WORDS, FLAG_WORDS, PARTICIPANT_WORDS, TAKES_PART_WORDS } from './fit-facts';

export { RELATION_WORDS } from './fit-facts';

/** A choice as people say it: `compressionSlot → 'compression slot'`. Other text is left as it is. */
export function choiceWords(value: string): string {
  return CHOICE_WORDS[value] ?? (/^[a-z]+([A-Z][a-z]*)+$/.test(value) ? spaced(value) : value);
}

const spaced = (camel: string) => camel.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** A fact's value with its unit; `null` says that it is not stated. */
export function writeFactValue(unit: FactUnit, value: FactValue): string {
  if (value === null) return 'not stated';
  if (typeof value === 'object') {
    const one: FactUnit = unit === 'umList' ? 'um' : 'text';
    return value.length === 0 ? 'none' : value.map((each) => writeFactValue(one, each)).join(', ');
  }
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return choiceWords(value);
  switch (unit) {
    case 'um':
    case 'umList':
      return `${writeMm(value)} mm`;
    case 'degrees':
      return `${value}°`;
    case 'newtonMillimetres':
      return `${writeMm(value)} N·m`;
    default:
      return String(value);
  }
}

function factNamed(relation: Relation, name: string): DeclaredFact | null {
  return FACTS[relation].get(name) ?? null;
}

/** `screw.threadUm → 'the screw’s thread diameter'`; a name nobody declared is shown as it stands. */
export function factWords(relation: Relation, name: string): string {
  const fact = factNamed(relation, name);
  if (!fact) return name;
  const label = (FACT_WORDS[fact.subject] as Record<string, string>)[fact.fact] ?? spaced(fact.fact);
  return `${PARTICIPANT_WORDS[fact.participant]?.its ?? `the ${fact.participant}’s`} ${label}`;
}

/** The value of one fact seen, as people read it. */
export function seenWords(relation: Relation, name: string, value: FactValue): string {
  const fact = factNamed(relation, name);
  if (fact && typeof value === 'boolean') {
    const words = FLAG_WORDS[fact.fact];
    if (words) return value ? words.yes : words.no;
  }
  return writeFactValue(fact?.unit ?? 'text', value);
}

const SETTING_WORDS: Record<keyof FitSettings, string> = { sleeveToleranceUm: 'the sleeve tolerance' };

function unitOf(relation: Relation, term: Term): FactUnit | null {
  if ('fact' in term) return factNamed(relation, term.fact)?.unit ?? null;
  if ('setting' in term) return 'um';
  if ('plus' in term) return unitOf(relation, term.plus[0]) ?? unitOf(relation, term.plus[1]);
  if ('minus' in term) return unitOf(relation, term.minus[0]) ?? unitOf(relation, term.minus[1]);
  return null;
}

function termWords(relation: Relation, term: Term, unit: FactUnit | null): string {
  if ('fact' in term) return factWords(relation, term.fact);
  if ('setting' in term) return SETTING_WORDS[term.setting as keyof FitSettings] ?? term.setting;
  if ('value' in term) return writeFactValue(unit ?? 'text', term.value);
  const [[left, right], joined] = 'plus' in term ? [term.plus, 'plus'] : [term.minus, 'less'];
  return `${termWords(relation, left, unit)} ${joined} ${termWords(relation, right, unit)}`;
}

const listed = (parts: string[], last: 'and' | 'or') =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} ${last} ${parts.at(-1)}`;

/**
 * A condition in plain words: "the screw’s core diameter is at most the bit’s diameter and …". `no` asks
 * for its denial. Nested groups stand in brackets, so that the words mean one thing only.
 */
export function conditionWords(relation: Relation, condition: Condition, no = false): string {
  if ('all' in condition) {
    if (condition.all.length === 0) return no ? 'never' : 'always';
    return group(relation, condition.all, no ? 'or' : 'and', no);
  }
  if ('any' in condition) {
    if (condition.any.length === 0) return no ? 'always' : 'never';
    return group(relation, condition.any, no ? 'and' : 'or', no);
  }
  if ('not' in condition) return conditionWords(relation, condition.not, !no);
  if ('takesPart' in condition) {
    const words = TAKES_PART_WORDS[condition.takesPart];
    const the = PARTICIPANT_WORDS[condition.takesPart]?.the ?? condition.takesPart;
    return no ? (words?.no ?? `${the} takes no part`) : (words?.yes ?? `${the} takes part`);
  }
  if ('oneOf' in condition) {
    const unit = unitOf(relation, condition.oneOf[0]);
    const options = listed(
      condition.oneOf[1].map((value) => writeFactValue(unit ?? 'text', value)),
      'or',
    );
    return `${termWords(relation, condition.oneOf[0], unit)} is ${no ? 'not ' : ''}${options}`;
  }
  if ('lists' in condition) {
    const [list, one] = condition.lists;
    const unit = unitOf(relation, one) ?? (unitOf(relation, list) === 'umList' ? 'um' : 'text');
    return `${termWords(relation, list, null)} ${no ? 'do not include' : 'include'} ${termWords(relation, one, unit)}`;
  }
  if ('equal' in condition) return equalWords(relation, condition.equal, no);
  const [[a, b], words] =
    'below' in condition
      ? [condition.below, no ? 'is not below' : 'is below']
      : [condition.atMost, no ? 'is above' : 'is at most'];
  const unit = unitOf(relation, a) ?? unitOf(relation, b);
  return `${termWords(relation, a, unit)} ${words} ${termWords(relation, b, unit)}`;
}

function group(relation: Relation, parts: Condition[], joined: 'and' | 'or', no: boolean): string {
  const words = parts.map((part) => {
    const text = conditionWords(relation, part, no);
    return parts.length > 1 && isGroup(part) ? `(${text})` : text;
  });
  return words.some((text) => text.includes(' and ') || text.includes(' or ')) && words.length > 2
    ? words.join(`; ${joined} `)
    : listed(words, joined);
}

function isGroup(condition: Condition): boolean {
  if ('not' in condition) return isGroup(condition.not);
  return ('all' in condition && condition.all.length > 1) || ('any' in condition && condition.any.length > 1);
}

function equalWords(relation: Relation, [a, b]: [Term, Term], no: boolean): string {
  const flag =
    'fact' in a && 'value' in b && typeof b.value === 'boolean' ? factNamed(relation, a.fact) : null;
  const words = flag && FLAG_WORDS[flag.fact];
  if (flag && words && 'value' in b) {
    const the = PARTICIPANT_WORDS[flag.participant]?.the ?? flag.participant;
    return `${the} ${(b.value === true) !== no ? words.yes : words.no}`;
  }
  const unit = unitOf(relation, a) ?? unitOf(relation, b);
  const verb = 'value' in a || 'value' in b ? (no ? 'is not' : 'is') : no ? 'differs from' : 'equals';
  return `${termWords(relation, a, unit)} ${verb} ${termWords(relation, b, unit)}`;
}

/** Where a rule comes from, in one line. */
export function sourceWords(source: Source): string {
  switch (source.kind) {
    case 'standard':
      return source.clause ? `${source.number}, ${source.clause}` : source.number;
    case 'instructionsForUse':
      return `Instructions for use: ${source.maker}, ${source.document}`;
    case 'localPolicy':
      return `Local policy: ${source.owner}, ${source.date}`;
    case 'commonPractice':
      return 'Common practice, no source';
  }
}

/** A rule's code as a heading: `seat-ha-hb-in-spherical-seat → 'Seat HA HB in spherical seat'`. */
export function ruleTitle(code: string): string {
  const words = code.split('-').map((word) => (/^h[abcd]$/.test(word) ? word.toUpperCase() : word));
  const text = words.join(' ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A full stop, and a large first letter unless the line goes on from another. */
export function asSentence(words: string, large = true): string {
  const text = large ? words.charAt(0).toUpperCase() + words.slice(1) : words;
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** What is missing, for a rule that could not be answered. */
export function missingSentence(relation: Relation, missing: readonly string[]): string {
  const words = listed(
    missing.map((name) => factWords(relation, name)),
    'and',
  );
  return asSentence(`${words} ${missing.length > 1 ? 'are' : 'is'} not stated`);
}

export const NO_RULE_SENTENCE = 'No rule in force says whether these go together.';
