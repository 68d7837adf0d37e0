import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { PlanJson } from "../../server/cli/plan-json.ts";
import { planCommand } from "../../server/cli/plan.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import { ovenSupper } from "./oven-supper.ts";

let folder = "";
let out: string[] = [];

beforeEach(() => {
  // Whatever was cooked in this checkout has no say.
  vi.stubEnv("STOVECALL_DATA", "no-such-folder");
  folder = mkdtempSync(join(tmpdir(), "plan-awaited-"));
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

async function printed(...words: readonly string[]): Promise<readonly string[]> {
  out = [];
  expect(await runCli(["plan", ...words], [planCommand])).toBe(0);
  return out;
}
const planned = async (meal: string): Promise<PlanJson> =>
  JSON.parse((await printed(meal, "--json")).join("")) as PlanJson;

describe("what dinner waits for, on the command line", () => {
  it("[P40] a star stands before it, and a line says what that means", async () => {
    const lines = await printed("welcome-supper");
    expect(lines).toContain("* Dinner waits for these: when one slips, dinner slips.");
    const starred = lines.filter((line) => /^\* +\d/.test(line)).map((line) => Number(line.split(/ +/)[1]));
    const { steps, elapsedMin } = await planned("welcome-supper");
    const awaited = steps.filter(({ critical }) => critical);
    expect(starred).toEqual(awaited.map(({ start }) => Math.round(start * 2) / 2));
    expect(awaited.at(-1)?.end).toBe(elapsedMin);
  });

  it("[P44] a step says whether dinner waits for it, and how much later it may start", async () => {
    const { steps } = await planned(ovenSupper(folder));
    // By hand: from 70 F the oven takes 11.5 minutes to 300 F at 20 F a minute, and 7.5 on to 450 F. The custard is
    // whisked in 4 and the loaf shaped in 5 minutes: they wait for the oven, dinner waits for what bakes.
    expect(steps.map(({ step, critical, slackMin }) => [step, critical, slackMin])).toEqual([
      ["whisk-the-custard", false, 11.5 - 4],
      ["shape-the-bread", false, 11.5 + 30 + 7.5 - 5 - 4],
      ["bake-the-custard", true, 0],
      ["bake-the-bread", true, 0],
    ]);
  });
});
