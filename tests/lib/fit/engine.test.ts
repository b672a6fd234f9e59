import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createFitEngine } from '@/lib/fit/engine';
import type { Question } from '@/lib/fit/question';
import {
  type Condition,
  DEFAULT_FIT_SETTINGS,
  type FitException,
  type FitRule,
  fitException,
} from '@/lib/fit/rule';
import { starterRules } from '@/seed/rules';
import {
  bit,
  corticalScrew,
  hole,
  lockingScrew,
  plate,
  seats,
  threadedHole,
  twoZoneHole,
} from '../../rules/pieces';

const settings = DEFAULT_FIT_SETTINGS;
const engineOf = (rules: readonly FitRule[], exceptions: FitException[] = []) =>
  createFitEngine({ rules, exceptions, settings });
const starter = engineOf(starterRules);

const [anyRule] = starterRules;
if (!anyRule) throw new Error('there are starter rules');
const rule = (more: Partial<FitRule>): FitRule => ({ ...anyRule, ...more });

const screws = fc.record({
  head: fc.constantFrom('spherical', 'conicalPlain', 'threaded', null),
  threadForm: fc.constantFrom('HA', 'HC', 'locking', null),
  threadUm: fc.constantFrom(2700, 3500, 4500, null),
  coreUm: fc.constantFrom(1900, 2400, 3000, null),
  headUm: fc.constantFrom(3000, 6000, 8000, null),
  tip: fc.constantFrom('blunt', 'selfTapping', 'selfDrillingSelfTapping', null),
  lockingFamily: fc.constantFrom('Alpha', 'Beta', null),
} as const);
const holes = fc.record({
  holeClass: fc.constantFrom('round', 'compressionSlot', 'threaded', 'twoZone', 'elongatedSlot', 'wireHole'),
  openingUm: fc.constantFrom(3000, 4000, 5000, null),
  seatUm: fc.constantFrom(5000, 6500, null),
  plainSeat: fc.constantFrom('spherical', 'conical', null),
  lockingFamily: fc.constantFrom('Alpha', 'Beta', null),
} as const);
const uses = fc.constantFrom(
  null,
  { purpose: 'neutral', cortices: 2 },
  { purpose: 'offset', cortices: 1 },
  { purpose: 'locked', cortices: 1 },
  { purpose: 'locked', cortices: 2 },
) as fc.Arbitrary<Extract<Question, { relation: 'seats' }>['use']>;

const ofSeats = fc.record({ screw: screws, hole: holes, use: uses, onPlate: fc.boolean() });
const somePlate = plate();
const build = ({
  screw,
  hole: at,
  use,
  onPlate,
}: typeof ofSeats extends fc.Arbitrary<infer T> ? T : never): Question =>
  seats({
    screw: corticalScrew(screw as object),
    hole: hole(at as object),
    use,
    plate: onPlate ? somePlate : null,
  });

describe('the order of rules never matters', () => {
  it('gives the same verdict, findings in the same order, for any order of rules', () => {
    const shuffled = fc.shuffledSubarray([...starterRules], { minLength: starterRules.length });
    fc.assert(
      fc.property(shuffled, ofSeats, (rules, parts) => {
        const question = build(parts);
        expect(engineOf(rules).ask(question)).toEqual(starter.ask(question));
      }),
      { numRuns: 60 },
    );
  });
});

describe('stating what was missing', () => {
  it('never turns one settled answer into the other', () => {
    fc.assert(
      fc.property(ofSeats, screws, holes, (known, moreScrew, moreHole) => {
        const fill = <T extends object>(now: T, more: object): T =>
          Object.fromEntries(
            Object.entries(now).map(([key, value]) => [key, value ?? (more as Record<string, unknown>)[key]]),
          ) as T;
        const before = starter.ask(build(known)).outcome;
        const after = starter.ask(
          build({ ...known, screw: fill(known.screw, moreScrew), hole: fill(known.hole, moreHole) }),
        ).outcome;
        if (before !== 'notEstablished') expect(after).toBe(before);
      }),
      { numRuns: 400 },
    );
  });

  it('holds for any conditions, not only those of the starter rules', () => {
    const leaf: fc.Arbitrary<Condition> = fc.constantFrom<Condition>(
      { equal: [{ fact: 'screw.head' }, { value: 'threaded' }] },
      { atMost: [{ fact: 'screw.threadUm' }, { fact: 'hole.openingUm' }] },
      { below: [{ fact: 'hole.openingUm' }, { fact: 'screw.headUm' }] },
      { equal: [{ fact: 'screw.lockingFamily' }, { fact: 'hole.lockingFamily' }] },
      { takesPart: 'use' },
      { equal: [{ fact: 'use.purpose' }, { value: 'locked' }] },
      { oneOf: [{ fact: 'screw.tip' }, ['blunt', 'selfTapping']] },
    );
    const { tree } = fc.letrec<{ tree: Condition }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 3 },
        leaf,
        fc.array(tie('tree'), { maxLength: 3 }).map((all): Condition => ({ all })),
        fc.array(tie('tree'), { maxLength: 3 }).map((any): Condition => ({ any })),
        tie('tree').map((not): Condition => ({ not })),
      ),
    }));
    const rules = fc.array(
      fc.record({ appliesWhen: tree, requires: tree, severity: fc.constantFrom('stops', 'caution', 'note') }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(rules, ofSeats, screws, (made, known, more) => {
        const engine = engineOf(
          made.map((one, index) => rule({ ...one, code: `rule-${index}` } as Partial<FitRule>)),
        );
        const filled = Object.fromEntries(
          Object.entries(known.screw).map(([key, value]) => [
            key,
            value ?? (more as Record<string, unknown>)[key],
          ]),
        ) as typeof known.screw;
        const before = engine.ask(build(known)).outcome;
        const after = engine.ask(build({ ...known, screw: filled })).outcome;
        if (before !== 'notEstablished') expect(after).toBe(before);
      }),
      { numRuns: 500 },
    );
  });
});

describe('three outcomes', () => {
  it('names a missing value only where it matters', () => {
    const verdict = starter.ask(seats({ hole: threadedHole({ openingUm: null }) }));
    expect(verdict.outcome).toBe('doesNotFit');
    expect(verdict.findings.flatMap(({ missing }) => missing)).toEqual([]);
  });

  it('collects every finding, not only the first', () => {
    const verdict = starter.ask(
      seats({
        screw: lockingScrew({ lockingFamily: 'Beta', tip: 'selfDrillingSelfTapping' }),
        hole: twoZoneHole(),
        use: { purpose: 'lag', cortices: 2 },
      }),
    );
    const broken = verdict.findings
      .filter(({ answer }) => answer === 'notMet')
      .map(({ from }) => from.kind === 'rule' && from.code);
    expect(broken).toEqual([
      'seat-locking-family-equal',
      'seat-plain-use-plain-screw',
      'seat-self-drilling-one-cortex',
    ]);
  });

  it('lists cautions without letting them decide', () => {
    const verdict = starter.ask({
      relation: 'wearsWith',
      first: plate({ material: 'iso5832-3' }),
      second: corticalScrew(),
    });
    expect(verdict.outcome).toBe('fits');
    expect(verdict.findings).toMatchObject([{ severity: 'caution', answer: 'notMet' }]);
  });

  it('does not call a pair a fit while the only rule about it, a caution, cannot be answered', () => {
    const verdict = starter.ask({
      relation: 'wearsWith',
      first: plate({ material: null }),
      second: corticalScrew(),
    });
    expect(verdict.outcome).toBe('notEstablished');
  });

  it('is not established where no rule is in force: silence is no fit', () => {
    const verdict = engineOf([]).ask(seats());
    expect(verdict.outcome).toBe('notEstablished');
    expect(verdict.findings).toMatchObject([{ from: { kind: 'noRule' }, answer: 'missing' }]);
  });

  it('is not established where no rule in force applies, or only notes do', () => {
    const never = rule({ appliesWhen: { any: [] } });
    const note = rule({ severity: 'note', code: 'only-a-note' });
    expect(engineOf([never]).ask(seats()).outcome).toBe('notEstablished');
    expect(engineOf([note]).ask(seats()).outcome).toBe('notEstablished');
  });

  it('lets a rule say nothing of a participant that takes no part, unless it asks whether one does', () => {
    const about = rule({ requires: { equal: [{ fact: 'use.cortices' }, { value: 1 }] } });
    const asks = rule({
      requires: { any: [{ not: { takesPart: 'use' } }, { equal: [{ fact: 'use.cortices' }, { value: 1 }] }] },
    });
    expect(engineOf([about]).ask(seats()).findings).toMatchObject([{ from: { kind: 'noRule' } }]);
    expect(engineOf([asks]).ask(seats()).outcome).toBe('fits');
  });

  it('writes the values into the sentence', () => {
    const verdict = starter.ask({ relation: 'pilots', bit: bit(2000), screw: corticalScrew() });
    expect(verdict.findings.find(({ answer }) => answer === 'notMet')?.sentence).toBe(
      'A 2 mm hole is narrower than the 2.4 mm core: the screw would jam or split the bone.',
    );
  });

  it('refuses a rule that names a fact nobody declared', () => {
    const wrong = rule({ requires: { equal: [{ fact: 'screw.colour' }, { value: 'gold' }] } });
    expect(() => engineOf([wrong])).toThrow('seats has no fact screw.colour');
  });
});

describe('named exceptions', () => {
  const screw = lockingScrew({ lockingFamily: 'Beta' });
  const on = plate();
  const mixed = seats({ screw, hole: threadedHole(), plate: on });
  const exception = (more: Partial<FitException>) =>
    fitException.parse({
      id: 'exception_one',
      relation: 'seats',
      firstItemId: screw.id,
      secondItemId: on.id,
      answer: 'allow',
      sentence: 'The maker declares this pair compatible.',
      source: { kind: 'instructionsForUse', maker: 'Invented', document: 'Leaflet 12, 2025' },
      status: 'inForce',
      draftedBy: null,
      approvedBy: null,
      inForceFrom: '2025-01-01',
      inForceUntil: null,
      withdrawalAskedBy: null,
      withdrawnBy: null,
      version: 1,
      ...more,
    });

  it('outrank the rule, say so, and leave its finding to be seen', () => {
    expect(starter.ask(mixed).outcome).toBe('doesNotFit');
    const verdict = engineOf(starterRules, [exception({})]).ask(mixed);
    expect(verdict.outcome).toBe('fits');
    expect(verdict.findings[0]).toMatchObject({
      from: { kind: 'exception', id: 'exception_one' },
      answer: 'met',
    });
    expect(verdict.findings.filter(({ outranked }) => outranked)).toMatchObject([
      { from: { code: 'seat-locking-family-equal' }, answer: 'notMet' },
    ]);
  });

  it('hold whichever item is named first', () => {
    const turned = exception({ firstItemId: on.id, secondItemId: screw.id });
    expect(engineOf(starterRules, [turned]).ask(mixed).outcome).toBe('fits');
  });

  it('can deny what the rules allow', () => {
    const plain = seats({ plate: on });
    if (plain.relation !== 'seats') throw new Error('seats');
    const deny = exception({ firstItemId: plain.screw.id, answer: 'deny' });
    expect(starter.ask(plain).outcome).toBe('fits');
    expect(engineOf(starterRules, [deny]).ask(plain).outcome).toBe('doesNotFit');
  });

  it('speak for their own relation and pair only', () => {
    const engine = engineOf(starterRules, [exception({})]);
    expect(
      engine.ask(seats({ screw: lockingScrew({ lockingFamily: 'Beta' }), hole: threadedHole(), plate: on }))
        .outcome,
    ).toBe('doesNotFit');
    const metals = engine.ask({ relation: 'wearsWith', first: screw, second: on });
    expect(metals.findings.every(({ from }) => from.kind === 'rule')).toBe(true);
  });

  it('deny when a pair is both allowed and denied, in any order', () => {
    const both = [exception({}), exception({ id: 'exception_two' as FitException['id'], answer: 'deny' })];
    expect(engineOf(starterRules, both).ask(mixed).outcome).toBe('doesNotFit');
    expect(engineOf(starterRules, both.reverse()).ask(mixed).outcome).toBe('doesNotFit');
  });
});
