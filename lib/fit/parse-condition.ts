import type { Problem } from '../identity/result';
import type { Condition, Term } from './rule';

type Path = (string | number)[];

export const CONDITION_KINDS = [
  'all',
  'any',
  'not',
  'equal',
  'below',
  'atMost',
  'oneOf',
  'lists',
  'takesPart',
] as const;
export const TERM_KINDS = ['fact', 'value', 'setting', 'plus', 'minus'] as const;

const DEEPEST = 8;
const LONGEST_TEXT = 120;

/**
 * Reads a condition from anything, pasted JSON for one, and collects every problem with its path. The condition
 * it answers is only meant to be used when no problem was added.
 */
export function parseCondition(raw: unknown, path: Path, problems: Problem[], depth = 0): Condition {
  const wrong = (code: string, message: string, at: Path = path): Condition => {
    problems.push({ path: at, code, message });
    return { all: [] };
  };
  if (depth > DEEPEST) return wrong('too-deep', `groups go at most ${DEEPEST} deep: split it into two rules`);
  const kind = onlyKey(raw);
  if (!kind)
    return wrong('not-a-condition', `a condition is an object with one key: ${CONDITION_KINDS.join(', ')}`);
  const inner = (raw as Record<string, unknown>)[kind];
  const at = [...path, kind];
  switch (kind) {
    case 'all':
    case 'any': {
      if (!Array.isArray(inner)) return wrong('not-a-list', `“${kind}” holds a list of conditions`, at);
      if (inner.length > 30) return wrong('too-many', 'at most 30 conditions in one group', at);
      const parts = inner.map((part, index) => parseCondition(part, [...at, index], problems, depth + 1));
      return kind === 'all' ? { all: parts } : { any: parts };
    }
    case 'not':
      return { not: parseCondition(inner, at, problems, depth + 1) };
    case 'equal':
      return { equal: twoTerms(inner, at, problems, depth) };
    case 'below':
      return { below: twoTerms(inner, at, problems, depth) };
    case 'atMost':
      return { atMost: twoTerms(inner, at, problems, depth) };
    case 'lists':
      return { lists: twoTerms(inner, at, problems, depth) };
    case 'oneOf': {
      if (!Array.isArray(inner) || inner.length !== 2 || !Array.isArray(inner[1])) {
        return wrong('not-a-pair', '“oneOf” holds a fact and a list of values', at);
      }
      const values = inner[1] as unknown[];
      if (values.length === 0 || values.length > 30)
        return wrong('too-few', 'name 1 to 30 values', [...at, 1]);
      const plain = values.filter((value) => typeof value === 'string' || typeof value === 'number');
      if (plain.length < values.length) wrong('not-a-value', 'values are words or numbers', [...at, 1]);
      return { oneOf: [parseTerm(inner[0], [...at, 0], problems, depth + 1), plain as (string | number)[]] };
    }
    case 'takesPart':
      return typeof inner === 'string'
        ? { takesPart: inner }
        : wrong('not-a-name', 'name the participant', at);
    default:
      return wrong('unknown-kind', `“${kind}” is no kind of condition: use ${CONDITION_KINDS.join(', ')}`);
  }
}

function twoTerms(raw: unknown, path: Path, problems: Problem[], depth: number): [Term, Term] {
  if (!Array.isArray(raw) || raw.length !== 2) {
    problems.push({ path, code: 'not-a-pair', message: 'exactly two values are compared' });
    return [{ value: 0 }, { value: 0 }];
  }
  return [
    parseTerm(raw[0], [...path, 0], problems, depth + 1),
    parseTerm(raw[1], [...path, 1], problems, depth + 1),
  ];
}

function parseTerm(raw: unknown, path: Path, problems: Problem[], depth: number): Term {
  const wrong = (code: string, message: string): Term => {
    problems.push({ path, code, message });
    return { value: 0 };
  };
  if (depth > DEEPEST) return wrong('too-deep', 'sums and differences go too deep');
  const kind = onlyKey(raw);
  const inner = kind ? (raw as Record<string, unknown>)[kind] : undefined;
  switch (kind) {
    case 'fact':
      return typeof inner === 'string' && inner.length <= LONGEST_TEXT
        ? { fact: inner }
        : wrong('not-a-fact', 'choose a fact');
    case 'setting':
      return typeof inner === 'string' && inner.length <= LONGEST_TEXT
        ? { setting: inner }
        : wrong('not-a-setting', 'choose a local setting');
    case 'value':
      if (typeof inner === 'boolean' || (typeof inner === 'number' && Number.isFinite(inner)))
        return { value: inner };
      if (typeof inner === 'string' && inner.length > 0 && inner.length <= LONGEST_TEXT)
        return { value: inner };
      return wrong(
        'not-a-value',
        `a value is a word of at most ${LONGEST_TEXT} letters, a number, or true or false`,
      );
    case 'plus':
      return { plus: twoTerms(inner, [...path, kind], problems, depth) };
    case 'minus':
      return { minus: twoTerms(inner, [...path, kind], problems, depth) };
    default:
      return wrong('not-a-term', `a value to compare is an object with one key: ${TERM_KINDS.join(', ')}`);
  }
}

function onlyKey(raw: unknown): string | null {
  if (raw === null || typeof raw !== 'object' || Array.isArray(raw)) return null;
  const keys = Object.keys(raw);
  return keys.length === 1 ? (keys[0] ?? null) : null;
}
