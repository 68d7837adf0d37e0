import { z } from "zod";

/** How many tests of one or more runs passed, how many did not, and what those that failed said, a line each. */
export type Tally = {
  readonly passed: number;
  readonly failed: number;
  readonly complaints: readonly string[];
};

const assertion = z.object({
  status: z.string(),
  fullName: z.string(),
  failureMessages: z.array(z.string()).nullish(),
});

const report = z.object({
  numPassedTests: z.number(),
  numFailedTests: z.number(),
  numPendingTests: z.number(),
  numTodoTests: z.number(),
  testResults: z.array(
    z.object({
      status: z.string(),
      name: z.string(),
      message: z.string().optional(),
      assertionResults: z.array(assertion),
    }),
  ),
});

/**
 * Counts one run from vitest's JSON report. A file that failed before its first test counts as one failure,
 * and so does every skipped test: a test that does not run proves nothing.
 * @param json the report's text; null where the run wrote none, which counts as one failure
 * @param exitCode of the run: one that failed although no test did (an error outside tests) counts as one failure
 */
export function tally(json: string | null, exitCode: number): Tally {
  if (json === null) return { passed: 0, failed: 1, complaints: ["The run wrote no report."] };
  const run = report.parse(JSON.parse(json));
  const broken = run.testResults.filter(
    (file) => file.status === "failed" && file.assertionResults.length === 0,
  );
  const complaints = [
    ...broken.map((file) => `${file.name}: ${firstLine(file.message ?? "did not load")}`),
    ...run.testResults.flatMap((file) =>
      file.assertionResults
        .filter((test) => test.status !== "passed")
        .map(
          (test) => `${file.name}: ${test.fullName}: ${firstLine(test.failureMessages?.[0] ?? test.status)}`,
        ),
    ),
  ];
  const failed = run.numFailedTests + run.numPendingTests + run.numTodoTests + broken.length;
  if (failed > 0 || exitCode === 0) return { passed: run.numPassedTests, failed, complaints };
  return { passed: run.numPassedTests, failed: 1, complaints: ["An error outside every test: see above."] };
}

const firstLine = (message: string): string => message.split("\n", 1)[0] ?? "";

/** Adds two runs up. */
export function together(one: Tally, other: Tally): Tally {
  return {
    passed: one.passed + other.passed,
    failed: one.failed + other.failed,
    complaints: [...one.complaints, ...other.complaints],
  };
}
