import { describe, expect, it } from 'vitest';
import type { Finding } from '@/lib/fit/finding';
import { factsOfVerdict } from '@/lib/plans/fitFindings';

const said = (answer: Finding['answer'], severity: Finding['severity'], outcome: 'fits' | 'doesNotFit') =>
  factsOfVerdict(
    {
      relation: 'seats',
      outcome,
      findings: [
        {
          from: { kind: 'rule', id: 'rule_test' as never, code: 'test' },
          answer,
          severity,
          sentence: 'The test says so.',
          source: null,
          seen: [],
          missing: answer === 'missing' ? ['screw.tip'] : [],
          outranked: false,
        },
      ],
    },
    'cortical 3.5',
    null,
  ).map(({ code, group }) => `${group} ${code}`);

describe('a rule that is not met becomes a finding of its severity', () => {
  // domain.md: severity is stops, caution or note; a value that is missing is never an answer
  it.each([
    ['notMet', 'stops', 'doesNotFit', ['stop fit']],
    ['notMet', 'caution', 'fits', ['caution fit']],
    ['notMet', 'note', 'fits', ['note fit']],
    ['missing', 'caution', 'fits', ['notEstablished fit']],
    ['missing', 'note', 'fits', ['note fit']],
    ['met', 'note', 'fits', []],
  ] as const)('%s, %s', (answer, severity, outcome, expected) => {
    expect(said(answer, severity, outcome)).toEqual(expected);
  });
});
