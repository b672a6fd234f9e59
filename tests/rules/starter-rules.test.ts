import { describe, expect, it } from 'vitest';
import { checkRule } from '@/lib/fit/check-rule';
import { createFitEngine } from '@/lib/fit/engine';
import { DEFAULT_FIT_SETTINGS } from '@/lib/fit/rule';
import { starterRules } from '@/seed/rules';
import type { RuleCase } from './case';
import { drillingCases } from './drilling.cases';
import { drivingCases } from './driving.cases';
import { seatCases } from './seats.cases';
import { sleeveCases } from './sleeves.cases';

const cases: RuleCase[] = [...seatCases, ...sleeveCases, ...drillingCases, ...drivingCases];
const byCode = new Map(starterRules.map((rule) => [rule.code, rule]));
const settings = DEFAULT_FIT_SETTINGS;

describe('each starter rule, by itself', () => {
  it.each(cases)('$rule · $says: $why', ({ rule: code, says, ask, missing }) => {
    const rule = byCode.get(code);
    if (!rule) throw new Error(`no such rule: ${code}`);
    const verdict = createFitEngine({ rules: [rule], exceptions: [], settings }).ask(ask);
    const finding = verdict.findings.find(({ from }) => from.kind === 'rule' && from.code === code);

    expect(finding?.answer ?? 'silent').toBe(says);
    if (missing) expect(finding?.missing).toEqual(missing);
    expect(finding?.sentence ?? '').not.toMatch(/[{}]|undefined|NaN/);
    if (rule.severity !== 'stops') return;
    const outcome = {
      met: 'fits',
      notMet: 'doesNotFit',
      missing: 'notEstablished',
      silent: 'notEstablished',
    } as const;
    const undecided = says === 'met' && verdict.findings.some(({ from }) => from.kind === 'noRule');
    expect(verdict.outcome).toBe(undecided ? 'notEstablished' : outcome[says]);
  });
});

describe('the starter set as a whole', () => {
  it('has a fits, a does-not-fit and a not-established case for every rule', () => {
    const lacking = starterRules.flatMap(({ code }) =>
      (['met', 'notMet', 'missing'] as const)
        .filter((says) => !cases.some((one) => one.rule === code && one.says === says))
        .map((says) => `${code} lacks a case in which it is ${says}`),
    );
    expect(lacking).toEqual([]);
  });

  it('has no case for a rule that is not in it', () => {
    expect(cases.filter(({ rule }) => !byCode.has(rule)).map(({ rule }) => rule)).toEqual([]);
  });

  it('names only facts, participants and settings that exist, compared in one unit', () => {
    expect(
      starterRules.flatMap((rule) => checkRule(rule).map((problem) => `${rule.code}: ${problem.message}`)),
    ).toEqual([]);
  });

  it('gives every rule a code and an id of its own', () => {
    expect(byCode.size).toBe(starterRules.length);
    expect(new Set(starterRules.map(({ id }) => id)).size).toBe(starterRules.length);
  });
});
