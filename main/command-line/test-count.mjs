/**
 * @typedef {object} Count
 * @property {number} passed
 * @property {number} failed
 */

/**
 * Counts of one run of the test runner. A file that could not be loaded holds no test but counts as failed, and so
 * does a runner that crashed or failed without naming a failed test.
 * @param {string | undefined} report JSON report, undefined where none was written
 * @param {number} exitCode
 * @returns {Count}
 */
export function countTests(report, exitCode) {
  const read = report === undefined ? undefined : readReport(report);
  if (!read) return { passed: 0, failed: 1 };
  const unloaded = read.testResults.filter(
    (file) => file.status === "failed" && file.assertionResults.length === 0,
  );
  const failed = read.numFailedTests + unloaded.length;
  const unexplained = exitCode !== 0 && failed === 0;
  return { passed: read.numPassedTests, failed: failed + (unexplained ? 1 : 0) };
}

/**
 * @param {string} report
 * @returns {{ numPassedTests: number, numFailedTests: number, testResults: { status: string, assertionResults: unknown[] }[] } | undefined}
 */
function readReport(report) {
  try {
    return JSON.parse(report);
  } catch {
    return undefined;
  }
}

/**
 * @param {readonly Count[]} counts
 * @returns {string}
 */
export function summaryLine(counts) {
  const passed = counts.reduce((sum, count) => sum + count.passed, 0);
  const failed = counts.reduce((sum, count) => sum + count.failed, 0);
  return `${passed} passed, ${failed} failed`;
}
