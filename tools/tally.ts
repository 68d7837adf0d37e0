import { z } from "zod";

/** How many tests of one or more runs passed, and how many did not. */
export type Tally = { readonly passed: number; readonly failed: number };

const report = z.object({
  numPassedTests: z.number(),
  numFailedTests: z.number(),
  numPendingTests: z.number(),
  numTodoTests: z.number(),
  testResults: z.array(z.object({ status: z.string(), assertionResults: z.array(z.unknown()) })),
});

/**
 * Counts one run from vitest's JSON report. A file that failed before its first test counts as one failure,
 * and so does every skipped test: a test that does not run proves nothing.
 * @param json the report's text; null where the run wrote none, which counts as one failure
 * @param exitCode of the run: one that failed although no test did (an error outside tests) counts as one failure
 */
export function tally(json: string | null, exitCode: number): Tally {
  if (json === null) return { passed: 0, failed: 1 };
  const run = report.parse(JSON.parse(json));
  const broken = run.testResults.filter(
    (file) => file.status === "failed" && file.assertionResults.length === 0,
  );
  const failed = run.numFailedTests + run.numPendingTests + run.numTodoTests + broken.length;
  return { passed: run.numPassedTests, failed: failed === 0 && exitCode !== 0 ? 1 : failed };
}

/** Adds two runs up. */
export function together(one: Tally, other: Tally): Tally {
  return { passed: one.passed + other.passed, failed: one.failed + other.failed };
}
