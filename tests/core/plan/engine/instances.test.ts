import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { instancesFolder, readSet } from "../../../scheduling/instances.ts";
import { readInstance } from "../../../scheduling/read-instances.ts";
import { bestKnown, readOptima } from "../../../scheduling/read-optima.ts";
import { allOf, fisherThompson6, smallNetwork } from "../../../scheduling/small-network.ts";

const psplib = `
jobs (incl. supersource/sink ):  4
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           4
   3        1          1           4
   4        1          0
****
REQUESTS/DURATIONS:
jobnr. mode duration  R 1  R 2
------------------------------
  1      1     0       0    0
  2      1     5       2    0
  3      1     3       1    4
  4      1     0       0    0
****
RESOURCEAVAILABILITIES:
  R 1  R 2
    2    4
****
`;

const progenMax = [
  "2	1	0	0",
  "0	1	1	1	[0]",
  "1	1	2	2	3	[3]	[5]",
  "2	1	2	1	3	[-4]	[2]",
  "3	1	0",
  "0	1	0	0",
  "1	1	5	1",
  "2	1	2	1",
  "3	1	0	0",
  "1",
].join("\r\n");

describe("a public instance", () => {
  it("[H7] of PSPLIB has a lag from start to start as long as the job before", () => {
    expect(readInstance("tiny.sm", psplib)).toEqual({
      ok: true,
      value: smallNetwork([0, 5, 3, 0], {
        lags: [
          { from: 0, to: 1, least: 0 },
          { from: 0, to: 2, least: 0 },
          { from: 1, to: 3, least: 5 },
          { from: 2, to: 3, least: 3 },
        ],
        capacities: [2, 4],
        uses: [
          [],
          [{ thing: 0, amount: 2, from: 0, to: 5 }],
          [
            { thing: 0, amount: 1, from: 0, to: 3 },
            { thing: 1, amount: 4, from: 0, to: 3 },
          ],
          [],
        ],
      }),
    });
  });

  it("[H7] of ProGen/max keeps its lags, negative ones too", () => {
    expect(readInstance("tiny.sch", progenMax)).toEqual({
      ok: true,
      value: smallNetwork([0, 5, 2, 0], {
        lags: [
          { from: 0, to: 1, least: 0 },
          { from: 1, to: 2, least: 3 },
          { from: 1, to: 3, least: 5 },
          { from: 2, to: 1, least: -4 },
          { from: 2, to: 3, least: 2 },
        ],
        capacities: [1],
        uses: [[], [allOf(0, 5)], [allOf(0, 2)], []],
      }),
    });
  });

  it("[H7] of a job shop has an act for each operation, in the order of its job", () => {
    const read = readInstance("ft06.txt", `# six jobs${fisherThompson6}`);
    if (!read.ok) throw new Error(read.error);
    const { lengths, lags, capacities, uses } = read.value;
    expect(lengths).toHaveLength(36);
    expect(lengths.slice(0, 6)).toEqual([1, 3, 6, 7, 3, 6]);
    expect(capacities).toEqual([1, 1, 1, 1, 1, 1]);
    expect(uses[7]).toEqual([allOf(2, 5)]);
    expect(lags).toHaveLength(30);
    expect(lags[5]).toEqual({ from: 6, to: 7, least: 8 });
  });

  it.each([
    [
      "notes.txt",
      "Bring a coat.",
      "notes.txt is neither a PSPLIB, nor a ProGen/max, nor a job shop instance.",
    ],
    ["a.txt", "2 2\n0 1 1 1", "a.txt cannot be read: 2 jobs are announced, and 1 follow."],
    ["a.txt", "1 2\n0 1 5 1", "a.txt cannot be read: job 1 asks for machine 5."],
    [
      "a.txt",
      "1 2\n0 1 1",
      "a.txt cannot be read: the line with job 1 should hold at least 4 whole numbers.",
    ],
    [
      "a.sch",
      progenMax.replace("[5]", ""),
      "a.sch cannot be read: act 1 has not 2 successors with a lag each.",
    ],
    [
      "a.sch",
      progenMax.slice(0, 40),
      "a.sch cannot be read: 2 acts are announced, which takes 10 lines, and 3 follow.",
    ],
    [
      "a.sm",
      psplib.replace("  3      1     3", "  3      2     3"),
      "a.sm cannot be read: a job has several modes, and only single-mode files are read.",
    ],
    [
      "a.sm",
      psplib.replace("RESOURCEAVAILABILITIES", ""),
      "a.sm cannot be read: the part ^RESOURCEAVAILABILITIES is missing.",
    ],
    [
      "a.sm",
      psplib.replace("   2        1          1           4", "   2        1          1           9"),
      "a.sm cannot be read: a lag leads from act 1 to act 8, and there are 4 acts.",
    ],
  ])("[H7] that is malformed is told in one sentence: %s", (file, text, error) => {
    expect(readInstance(file, text)).toEqual({ ok: false, error });
  });
});

describe("a table of optima", () => {
  it("[H7] tells an end, bounds, or that there is none", () => {
    const read = readOptima(
      "optimum.csv",
      "problem,set,optimum\na.sm,x,43\nb,x,104..105\r\nc,x,..83\nd,x,unsat",
    );
    if (!read.ok) throw new Error(read.error);
    expect(Object.fromEntries(read.value)).toEqual({
      a: { kind: "exact", end: 43 },
      b: { kind: "between", least: 104, most: 105 },
      c: { kind: "between", least: null, most: 83 },
      d: { kind: "impossible" },
    });
    expect([...read.value.values()].map(bestKnown)).toEqual([43, 105, 83, null]);
  });

  it("[H7] that is malformed is told in one sentence", () => {
    expect(readOptima("o.csv", "name,best\na,1")).toEqual({
      ok: false,
      error: 'o.csv cannot be read: it has no columns "problem" and "optimum".',
    });
    expect(readOptima("o.csv", "problem,optimum\na,soon")).toEqual({
      ok: false,
      error: 'o.csv cannot be read: "a,soon" tells no optimum.',
    });
  });
});

// The public instances are others' work and lie beside this repository, if at all; `it.skipIf` would count as failed.
const folder = instancesFolder();
if (folder !== null) {
  describe("the public instances on this machine", () => {
    const sets = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
    it.each(sets.map((entry) => entry.name))("[H7] of %s are all read, and each has its optimum", (set) => {
      const { instances, complaints } = readSet(join(folder, set));
      expect(complaints).toEqual([]);
      expect(instances.filter((instance) => instance.optimum === null)).toEqual([]);
      expect(instances.length).toBeGreaterThan(0);
    });
  });
}
