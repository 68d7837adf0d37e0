import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { PlanJson } from "../../server/cli/plan-json.ts";
import { planCommand } from "../../server/cli/plan.ts";
import { runCli } from "../../server/cli/run-cli.ts";

let out: string[] = [];
let told: string[] = [];

beforeEach(() => {
  // Whatever was cooked in this checkout has no say.
  vi.stubEnv("STOVECALL_DATA", "no-such-folder");
  [out, told] = [[], []];
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => void vi.restoreAllMocks());

const plan = (...words: readonly string[]): Promise<number> => runCli(["plan", ...words], [planCommand]);

describe("plan --lull", () => {
  it("[P135] tells what is kept free, and in a sentence each what stays there", async () => {
    expect([await plan("welcome-supper", "--lull", "15"), told]).toEqual([0, []]);
    expect(out).toContain("The last 15 minutes are kept free as far as it goes.");
    expect(out.join(" ")).toMatch(/Still then, as they keep no longer: [a-z ,]*dress the salad/);
    for (const line of out) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("[P135] prints with --json how long, and each step that stays there with its reason", async () => {
    await plan("welcome-supper", "--lull", "15", "--json");
    const { lull } = JSON.parse(out[0] ?? "") as PlanJson;
    expect(lull?.minutes).toBe(15);
    expect(lull?.stays).toContainEqual({
      dish: "cabbage-salad",
      step: "dress-the-salad",
      because: "keeps",
    });
    out = [];
    await plan("welcome-supper", "--json");
    expect((JSON.parse(out[0] ?? "") as PlanJson).lull).toBeNull();
  });

  it.each(["x", "0", "61", "7.5", "-3"])("[P135] refuses %s in one sentence", async (length) => {
    expect([await plan("welcome-supper", `--lull=${length}`), out]).toEqual([2, []]);
    expect(told).toEqual([
      "--lull takes whole minutes before serving, from 1 to 60, for instance: --lull 10",
    ]);
  });
});
