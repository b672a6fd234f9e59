import { describe, expect, test } from 'vitest';
import { readArguments } from '@/scripts/testing/arguments.mjs';
import { addUp, closingLine, countPlaywright, countVitest } from '@/scripts/testing/summary.mjs';

describe('the line that closes a run', () => {
  test.each([
    [{ passed: 12, failed: 0, skipped: 0 }, '12 passed, 0 failed'],
    [{ passed: 12, failed: 1, skipped: 2 }, '12 passed, 1 failed, 2 skipped'],
  ])('%o', (counts, line) => {
    expect(closingLine(counts)).toBe(line);
  });

  test('adds up all stages', () => {
    const stages = [
      { passed: 2, failed: 0, skipped: 1 },
      { passed: 5, failed: 3, skipped: 0 },
    ];
    expect(addUp(stages)).toEqual({ passed: 7, failed: 3, skipped: 1 });
  });
});

describe("the runners' reports", () => {
  test('a test file that breaks before its first test is a failure', () => {
    const report = {
      numPassedTests: 4,
      numFailedTests: 1,
      numPendingTests: 0,
      numTodoTests: 1,
      testResults: [
        { status: 'passed', assertionResults: [{ status: 'passed' }] },
        { status: 'failed', assertionResults: [{ status: 'failed' }, { status: 'passed' }] },
        { status: 'failed', assertionResults: [] },
      ],
    };
    expect(countVitest(report)).toEqual({ passed: 4, failed: 2, skipped: 1 });
  });

  test('an error outside every browser test is a failure, a second try that passes is not', () => {
    const report = {
      stats: { expected: 7, flaky: 1, unexpected: 2, skipped: 0 },
      errors: [{ message: 'set-up' }],
    };
    expect(countPlaywright(report)).toEqual({ passed: 8, failed: 3, skipped: 0 });
  });
});

describe('the arguments', () => {
  const stages = ['types', 'lint', 'unit'];

  test.each([
    [[], { only: null, rest: [] }],
    [['--only', 'unit', 'tests/lib'], { only: ['unit'], rest: ['tests/lib'] }],
    [['--only=unit,types'], { only: ['types', 'unit'], rest: [] }],
  ])('%o', (args, meant) => {
    expect(readArguments(args, stages)).toEqual(meant);
  });

  test.each([[['--only', 'uint']], [['--only']], [['--only=']]])('%o is refused with the names', (args) => {
    expect(() => readArguments(args, stages)).toThrow('types, lint, unit');
  });
});
