import type { Problem } from '../identity/result';
import { FACTS, type FactUnit, PARTICIPANTS } from './facts';
import { type Condition, DEFAULT_FIT_SETTINGS, type FitRule, type Relation, type Term } from './rule';

type Path = (string | number)[];

/**
 * Everything that is wrong with a rule beyond its shape: facts, participants or settings its relation does not
 * have, values that cannot be compared, choices that do not exist, placeholders that name nothing. Empty when
 * the engine can use it. Paths follow the rule: `['requires', 'all', 0, 'below', 1]`.
 */
export function checkRule(
  rule: Pick<FitRule, 'relation' | 'appliesWhen' | 'requires' | 'sentence'>,
): Problem[] {
  const problems: Problem[] = [];
  checkCondition(rule.relation, rule.appliesWhen, ['appliesWhen'], problems);
  checkCondition(rule.relation, rule.requires, ['requires'], problems);
  if ('all' in rule.requires && rule.requires.all.length === 0) {
    problems.push(
      problem(
        ['requires'],
        'requires-nothing',
        'it requires nothing, so it could never stop anything: say what has to hold',
      ),
    );
  }
  for (const [, name = ''] of rule.sentence.matchAll(/\{([^{}]*)\}/g)) {
    if (!FACTS[rule.relation].has(name))
      problems.push(problem(['sentence'], 'unknown-fact', unknownFact(rule.relation, name)));
  }
  return problems;
}

const problem = (path: Path, code: string, message: string): Problem => ({ path, code, message });

function unknownFact(relation: Relation, name: string): string {
  const [participant = '', fact = ''] = name.split('.');
  const participants = Object.keys(PARTICIPANTS[relation]);
  if (!participants.includes(participant)) {
    return `“${name}” names no participant of this relation: it has ${participants.join(', ')}`;
  }
  return `“${participant}” has no fact “${fact}”`;
}

function checkCondition(relation: Relation, condition: Condition, path: Path, problems: Problem[]): void {
  if ('all' in condition || 'any' in condition) {
    const [key, parts] =
      'all' in condition ? (['all', condition.all] as const) : (['any', condition.any] as const);
    if (key === 'any' && parts.length === 0) {
      problems.push(problem([...path, key], 'empty-group', 'a group of alternatives needs at least one'));
    }
    for (const [index, part] of parts.entries())
      checkCondition(relation, part, [...path, key, index], problems);
  } else if ('not' in condition) {
    checkCondition(relation, condition.not, [...path, 'not'], problems);
  } else if ('takesPart' in condition) {
    if (!(condition.takesPart in PARTICIPANTS[relation])) {
      const message = `no “${condition.takesPart}” takes part: there are ${Object.keys(PARTICIPANTS[relation]).join(', ')}`;
      problems.push(problem([...path, 'takesPart'], 'unknown-participant', message));
    }
  } else if ('oneOf' in condition) {
    const unit = checkTerm(relation, condition.oneOf[0], [...path, 'oneOf', 0], problems);
    for (const [index, value] of condition.oneOf[1].entries()) {
      checkConstant(relation, condition.oneOf[0], unit, value, [...path, 'oneOf', 1, index], problems);
    }
  } else if ('lists' in condition) {
    checkLists(relation, condition.lists, [...path, 'lists'], problems);
  } else {
    checkComparison(relation, condition, path, problems);
  }
}

function checkComparison(
  relation: Relation,
  condition: Extract<Condition, { equal: unknown } | { below: unknown } | { atMost: unknown }>,
  path: Path,
  problems: Problem[],
): void {
  const [key, [left, right]] =
    'equal' in condition
      ? (['equal', condition.equal] as const)
      : 'below' in condition
        ? (['below', condition.below] as const)
        : (['atMost', condition.atMost] as const);
  const a = checkTerm(relation, left, [...path, key, 0], problems);
  const b = checkTerm(relation, right, [...path, key, 1], problems);
  if ('value' in right && !('value' in left))
    checkConstant(relation, left, a, right.value, [...path, key, 1], problems);
  else if ('value' in left && !('value' in right))
    checkConstant(relation, right, b, left.value, [...path, key, 0], problems);
  else if (a && b && a !== b)
    problems.push(problem([...path, key], 'unlike-units', `${NAMES[a]} cannot be compared with ${NAMES[b]}`));
  const measured = a ?? b;
  if (key !== 'equal' && measured && !isNumber(measured)) {
    problems.push(
      problem([...path, key], 'not-a-number', `${NAMES[measured]} is neither more nor less than another`),
    );
  }
}

function checkLists(relation: Relation, [list, one]: [Term, Term], path: Path, problems: Problem[]): void {
  const a = checkTerm(relation, list, [...path, 0], problems);
  const b = checkTerm(relation, one, [...path, 1], problems);
  if (a && a !== 'umList' && a !== 'textList') {
    problems.push(problem([...path, 0], 'not-a-list', `${NAMES[a]} is no list`));
    return;
  }
  const element: FactUnit | null = a === 'umList' ? 'um' : a === 'textList' ? 'text' : null;
  if ('value' in one) checkConstant(relation, list, element, one.value, [...path, 1], problems);
  else if (element && b && element !== b) {
    problems.push(problem(path, 'unlike-units', `a list of ${NAMES[element]} cannot hold ${NAMES[b]}`));
  }
}

/** The unit of a term; `null` for a constant, or when it is wrong and has been reported. */
function checkTerm(relation: Relation, term: Term, path: Path, problems: Problem[]): FactUnit | null {
  if ('value' in term) return null;
  if ('setting' in term) {
    if (term.setting in DEFAULT_FIT_SETTINGS) return 'um';
    problems.push(problem([...path, 'setting'], 'unknown-setting', `there is no setting “${term.setting}”`));
    return null;
  }
  if ('fact' in term) {
    const fact = FACTS[relation].get(term.fact);
    if (fact) return fact.unit;
    problems.push(problem([...path, 'fact'], 'unknown-fact', unknownFact(relation, term.fact)));
    return null;
  }
  const [key, [left, right]] =
    'plus' in term ? (['plus', term.plus] as const) : (['minus', term.minus] as const);
  const a = checkTerm(relation, left, [...path, key, 0], problems);
  const b = checkTerm(relation, right, [...path, key, 1], problems);
  const unit = a ?? b;
  if (a && b && a !== b)
    problems.push(
      problem([...path, key], 'unlike-units', `${NAMES[a]} and ${NAMES[b]} cannot be added or taken away`),
    );
  if (unit && !isNumber(unit))
    problems.push(problem([...path, key], 'not-a-number', `${NAMES[unit]} cannot be added or taken away`));
  return unit;
}

function checkConstant(
  relation: Relation,
  beside: Term,
  unit: FactUnit | null,
  value: string | number | boolean,
  path: Path,
  problems: Problem[],
): void {
  if (!unit) return;
  const wanted = unit === 'flag' ? 'boolean' : unit === 'text' || unit === 'textList' ? 'string' : 'number';
  if (typeof value !== wanted) {
    problems.push(problem(path, 'unlike-units', `“${value}” cannot be compared with ${NAMES[unit]}`));
    return;
  }
  if (typeof value === 'number' && !Number.isInteger(value)) {
    problems.push(
      problem(
        path,
        'not-whole',
        `${value} is not whole: write micrometres, degrees or N·mm without a fraction`,
      ),
    );
  }
  const choices = 'fact' in beside ? FACTS[relation].get(beside.fact)?.choices : null;
  if (choices && typeof value === 'string' && !choices.includes(value)) {
    problems.push(problem(path, 'unknown-choice', `“${value}” is none of ${choices.join(', ')}`));
  }
}

const isNumber = (unit: FactUnit) =>
  unit === 'um' || unit === 'degrees' || unit === 'newtonMillimetres' || unit === 'count';

const NAMES: Record<FactUnit, string> = {
  um: 'a length',
  degrees: 'an angle',
  newtonMillimetres: 'a torque',
  count: 'a number',
  text: 'a word',
  flag: 'a yes or no',
  umList: 'a list of lengths',
  textList: 'a list of words',
};
