import { describe, expect, it } from "vitest";
import { tally, together } from "../../tools/tally.ts";

type Counts = { passed?: number; failed?: number; pending?: number; todo?: number };

function report(counts: Counts, files: readonly { status: string; tests: number }[] = []): string {
  return JSON.stringify({
    numPassedTests: counts.passed ?? 0,
    numFailedTests: counts.failed ?? 0,
    numPendingTests: counts.pending ?? 0,
    numTodoTests: counts.todo ?? 0,
    testResults: files.map(({ status, tests }) => ({ status, assertionResults: new Array(tests).fill({}) })),
  });
}

describe("the count of tests", () => {
  it("[H1] adds both runs up", () => {
    const node = tally(report({ passed: 40, failed: 1 }, [{ status: "failed", tests: 41 }]), 1);
    const browser = tally(report({ passed: 2 }, [{ status: "passed", tests: 2 }]), 0);
    expect(together(node, browser)).toEqual({ passed: 42, failed: 1 });
  });

  it("[H2] counts a skipped and a planned test as failed", () => {
    expect(tally(report({ passed: 3, pending: 1, todo: 2 }), 0)).toEqual({ passed: 3, failed: 3 });
  });

  it("[H3] counts a file that could not be loaded as one failure", () => {
    expect(tally(report({ passed: 3 }, [{ status: "failed", tests: 0 }]), 1)).toEqual({
      passed: 3,
      failed: 1,
    });
  });

  it("[H3] counts a run without a report as one failure", () => {
    expect(tally(null, 0)).toEqual({ passed: 0, failed: 1 });
  });

  it("[H3] counts an error outside every test as one failure", () => {
    expect(tally(report({ passed: 3 }, [{ status: "passed", tests: 3 }]), 1)).toEqual({
      passed: 3,
      failed: 1,
    });
  });
});
