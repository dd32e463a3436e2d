import { expect, test } from "vitest";
import { countTests, summaryLine } from "../../../main/command-line/test-count.mjs";

const report = (parts: object): string =>
  JSON.stringify({ numPassedTests: 0, numFailedTests: 0, testResults: [], ...parts });

test("tests are counted as the runner counted them", () => {
  expect(countTests(report({ numPassedTests: 5 }), 0)).toEqual({ passed: 5, failed: 0 });
  expect(countTests(report({ numPassedTests: 5, numFailedTests: 2 }), 1)).toEqual({ passed: 5, failed: 2 });
});

test("a file that could not be loaded counts as failed", () => {
  const testResults = [
    { status: "failed", assertionResults: [] },
    { status: "passed", assertionResults: [{}] },
    { status: "failed", assertionResults: [{}] },
  ];
  expect(countTests(report({ numPassedTests: 1, numFailedTests: 1, testResults }), 1)).toEqual({
    passed: 1,
    failed: 2,
  });
});

test("a runner that crashed, or failed without a failed test, counts as failed", () => {
  expect(countTests(undefined, 0)).toEqual({ passed: 0, failed: 1 });
  expect(countTests("{ half a rep", 0)).toEqual({ passed: 0, failed: 1 });
  expect(countTests(report({ numPassedTests: 7 }), 1)).toEqual({ passed: 7, failed: 1 });
});

test("the summary adds up all runners", () => {
  expect(
    summaryLine([
      { passed: 1, failed: 0 },
      { passed: 40, failed: 2 },
      { passed: 0, failed: 1 },
    ]),
  ).toBe("41 passed, 3 failed");
});
