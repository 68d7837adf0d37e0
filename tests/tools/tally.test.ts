import { describe, expect, it } from "vitest";
import { tally, together } from "../../tools/tally.ts";

type Counts = { passed?: number; failed?: number; pending?: number; todo?: number };

type File = { status: string; tests: number; failing?: Readonly<Record<string, string>> };

const passing = { status: "passed", fullName: "it holds", failureMessages: [] };

/** A run as vitest reports it; `failing` gives the message of each failing test by its name. */
function report(counts: Counts, files: readonly File[] = []): string {
  return JSON.stringify({
    numPassedTests: counts.passed ?? 0,
    numFailedTests: counts.failed ?? 0,
    numPendingTests: counts.pending ?? 0,
    numTodoTests: counts.todo ?? 0,
    testResults: files.map(({ status, tests, failing = {} }) => ({
      status,
      name: "a.test.ts",
      message: "cannot find module\nmore of it",
      assertionResults: [
        ...Array.from({ length: tests - Object.keys(failing).length }, () => passing),
        ...Object.entries(failing).map(([fullName, message]) => ({
          status: "failed",
          fullName,
          failureMessages: [message],
        })),
      ],
    })),
  });
}

describe("the count of tests", () => {
  it("[H1] adds both runs up", () => {
    const node = tally(report({ passed: 40, failed: 1 }, [{ status: "failed", tests: 41 }]), 1);
    const browser = tally(report({ passed: 2 }, [{ status: "passed", tests: 2 }]), 0);
    expect(together(node, browser)).toMatchObject({ passed: 42, failed: 1 });
  });

  it("[H2] counts a skipped and a planned test as failed", () => {
    expect(tally(report({ passed: 3, pending: 1, todo: 2 }), 0)).toMatchObject({ passed: 3, failed: 3 });
  });

  it("[H3] counts a file that could not be loaded as one failure", () => {
    expect(tally(report({ passed: 3 }, [{ status: "failed", tests: 0 }]), 1)).toMatchObject({
      passed: 3,
      failed: 1,
    });
  });

  it("[H3] counts a run without a report as one failure", () => {
    expect(tally(null, 0)).toMatchObject({ passed: 0, failed: 1 });
  });

  it("[H3] counts an error outside every test as one failure", () => {
    expect(tally(report({ passed: 3 }, [{ status: "passed", tests: 3 }]), 1)).toMatchObject({
      passed: 3,
      failed: 1,
    });
  });

  it("[H6] says what failed, a line each: file, test and the first line of the fault", () => {
    const files = [
      {
        status: "failed",
        tests: 2,
        failing: { "a cup is sixteen spoons": "expected 15 to be 16\n at line 3" },
      },
      { status: "failed", tests: 0 },
    ];
    expect(tally(report({ passed: 1, failed: 1 }, files), 1)).toEqual({
      passed: 1,
      failed: 2,
      complaints: [
        "a.test.ts: cannot find module",
        "a.test.ts: a cup is sixteen spoons: expected 15 to be 16",
      ],
    });
    expect(together(tally(report({}, files), 1), tally(null, 1)).complaints).toHaveLength(3);
  });
});
