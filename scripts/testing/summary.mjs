/**
 * @typedef {{ passed: number, failed: number, skipped: number }} Counts
 * @typedef {Counts & { name: string, seconds: number }} StageResult
 */

/** @param {Counts[]} counts @returns {Counts} */
export function addUp(counts) {
  return counts.reduce(
    (sum, one) => ({
      passed: sum.passed + one.passed,
      failed: sum.failed + one.failed,
      skipped: sum.skipped + one.skipped,
    }),
    { passed: 0, failed: 0, skipped: 0 },
  );
}

/** The line that ends every run, alone on its line. @param {Counts} total */
export function closingLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

/** @param {StageResult[]} results */
export function table(results) {
  const rows = results.map(({ name, seconds, ...counts }) => {
    const outcome = counts.passed + counts.failed + counts.skipped === 0 ? 'ready' : closingLine(counts);
    return `${name.padEnd(10)} ${`${seconds.toFixed(1)} s`.padStart(9)}   ${outcome}`;
  });
  return rows.join('\n');
}

/**
 * Counts from vitest's JSON report. A file that fails before its first test counts as one failure.
 * @param {any} report
 * @returns {Counts}
 */
export function countVitest(report) {
  const emptyFailures = report.testResults.filter(
    (/** @type {any} */ file) =>
      file.status === 'failed' &&
      !file.assertionResults.some((/** @type {any} */ one) => one.status === 'failed'),
  ).length;
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + emptyFailures,
    skipped: report.numPendingTests + (report.numTodoTests ?? 0),
  };
}

/**
 * Counts from Playwright's JSON report. An error outside any test counts as one failure; a test that passed only
 * at its second try counts as passed.
 * @param {any} report
 * @returns {Counts}
 */
export function countPlaywright(report) {
  const { expected, flaky, unexpected, skipped } = report.stats;
  return { passed: expected + flaky, failed: unexpected + report.errors.length, skipped };
}
