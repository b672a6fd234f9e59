import { describe, expect, it } from 'vitest';
import { parseExceptionDraft, parseRuleDraft } from '@/lib/fit/draft';
import type { Condition, Relation } from '@/lib/fit/rule';
import { conditionWords } from '@/lib/wording/fit';

const good = {
  code: 'a-rule',
  relation: 'pilots',
  severity: 'stops',
  sentence: 'A sentence about {bit.diameterUm}.',
  source: { kind: 'commonPractice' },
  appliesWhen: { all: [] },
  requires: { atMost: [{ fact: 'bit.diameterUm' }, { fact: 'screw.threadUm' }] },
};
const problemsOf = (change: object) => {
  const parsed = parseRuleDraft({ ...good, ...change });
  return parsed.ok ? [] : parsed.problems.map(({ path, code }) => `${path.join('.')} ${code}`);
};

describe('a drafted rule', () => {
  it('is taken as it is when nothing is wrong', () => {
    expect(problemsOf({})).toEqual([]);
  });

  it.each<[string, object, string[]]>([
    [
      'a fact the relation does not have',
      { requires: { equal: [{ fact: 'hole.holeClass' }, { value: 'round' }] } },
      ['requires.equal.0.fact unknown-fact'],
    ],
    [
      'a length compared with a word',
      { requires: { equal: [{ fact: 'bit.diameterUm' }, { fact: 'screw.head' }] } },
      ['requires.equal unlike-units'],
    ],
    [
      'a word that is more than another',
      { requires: { below: [{ fact: 'screw.head' }, { fact: 'screw.tip' }] } },
      ['requires.below not-a-number'],
    ],
    [
      'a choice that does not exist',
      { requires: { equal: [{ fact: 'screw.head' }, { value: 'square' }] } },
      ['requires.equal.1 unknown-choice'],
    ],
    [
      'a fraction of a micrometre',
      { requires: { atMost: [{ fact: 'bit.diameterUm' }, { value: 2.5 }] } },
      ['requires.atMost.1 not-whole'],
    ],
    [
      'a participant of another relation',
      { requires: { takesPart: 'hole' } },
      ['requires.takesPart unknown-participant'],
    ],
    [
      'a setting that does not exist',
      { requires: { atMost: [{ fact: 'bit.diameterUm' }, { setting: 'mood' }] } },
      ['requires.atMost.1.setting unknown-setting'],
    ],
    ['nothing required', { requires: { all: [] } }, ['requires requires-nothing']],
    [
      'a placeholder that names nothing',
      { sentence: 'A sentence about {bit.colour}.' },
      ['sentence unknown-fact'],
    ],
    ['two kinds in one condition', { requires: { all: [], any: [] } }, ['requires not-a-condition']],
    ['no condition at all', { requires: null }, ['requires not-a-condition']],
    ['a sentence of 10,000 characters', { sentence: 'x'.repeat(10_000) }, ['sentence too-big']],
  ])('is refused for %s', (_, change, expected) => {
    expect(problemsOf(change)).toEqual(expected);
  });

  it('is refused when groups go ever deeper, without failing on it', () => {
    let deep: Condition = { takesPart: 'use' };
    for (let level = 0; level < 5000; level++) deep = { not: deep };
    expect(problemsOf({ requires: deep }).map((one) => one.split(' ')[1])).toEqual(['too-deep']);
  });

  it.each([null, 7, 'rule', []])('is refused when it is %j', (raw) => {
    expect(parseRuleDraft(raw).ok).toBe(false);
  });
});

describe('a drafted exception', () => {
  const pair = {
    relation: 'passes',
    firstItemId: 'item_a',
    secondItemId: 'item_b',
    answer: 'deny',
    sentence: 'A reason for it.',
    source: { kind: 'commonPractice' },
  };
  it('names two different designs, in a relation between designs', () => {
    expect(parseExceptionDraft(pair).ok).toBe(true);
    expect(parseExceptionDraft({ ...pair, secondItemId: 'item_a' })).toMatchObject({
      ok: false,
      problems: [{ path: ['secondItemId'] }],
    });
    expect(parseExceptionDraft({ ...pair, relation: 'sides' })).toMatchObject({
      ok: false,
      problems: [{ path: ['relation'] }],
    });
  });
});

describe('a condition in plain words', () => {
  const said = (relation: Relation, condition: Condition) => conditionWords(relation, condition);

  it.each<[Relation, Condition, string]>([
    ['pilots', { all: [] }, 'always'],
    ['pilots', { any: [] }, 'never'],
    [
      'pilots',
      { below: [{ fact: 'bit.diameterUm' }, { fact: 'screw.threadUm' }] },
      'the bit’s diameter is below the screw’s thread diameter',
    ],
    [
      'pilots',
      { not: { atMost: [{ fact: 'bit.diameterUm' }, { value: 2500 }] } },
      'the bit’s diameter is above 2.5 mm',
    ],
    [
      'seats',
      { not: { equal: [{ fact: 'hole.hasThreadedZone' }, { value: true }] } },
      'the hole has no threaded zone',
    ],
    [
      'seats',
      { not: { all: [{ takesPart: 'use' }, { oneOf: [{ fact: 'screw.tip' }, ['blunt', 'selfTapping']] }] } },
      'no use is planned or the screw’s tip is not blunt or self-tapping',
    ],
    [
      'passes',
      {
        atMost: [
          { minus: [{ fact: 'end.boreUm' }, { fact: 'tool.diameterUm' }] },
          { setting: 'sleeveToleranceUm' },
        ],
      },
      'the sleeve end’s bore less the bit or wire’s diameter is at most the sleeve tolerance',
    ],
    [
      'limits',
      { equal: [{ fact: 'limiter.torqueNmm' }, { value: 1500 }] },
      'the limiter’s torque class is 1.5 N·m',
    ],
  ])('%s %j reads: %s', (relation, condition, words) => {
    expect(said(relation, condition)).toBe(words);
  });

  it('puts nested groups in brackets, so that they mean one thing only', () => {
    const [a, b]: Condition[] = [{ takesPart: 'use' }, { takesPart: 'plate' }];
    expect(said('seats', { any: [a as Condition, { all: [a as Condition, b as Condition] }] })).toBe(
      'the use is planned or (the use is planned and the plate is known)',
    );
  });
});
