import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { PlanJson } from "../../server/cli/plan-json.ts";
import { planCommand } from "../../server/cli/plan.ts";
import { runCli } from "../../server/cli/run-cli.ts";

let out = "";

beforeEach(() => {
  // Whatever was cooked in this checkout has no say.
  vi.stubEnv("STOVECALL_DATA", "no-such-folder");
  vi.spyOn(console, "log").mockImplementation((text: string) => void (out += `${text}\n`));
});
afterEach(() => {
  vi.restoreAllMocks();
});

async function plan(...words: readonly string[]): Promise<string> {
  out = "";
  expect(await runCli(["plan", ...words], [planCommand])).toBe(0);
  return out;
}

const ways = async (meal: string): Promise<PlanJson["ways"]> =>
  (JSON.parse(await plan(meal, "--json")) as PlanJson).ways;

describe("plan, for a meal with steps that can be done in several ways", () => {
  const because = "Cook the pancakes in the oven: it takes four minutes less of your time than in a pan.";

  it("[P109] it tells which way each is done, and why", async () => {
    const text = (await plan("fog-bell-breakfast")).replaceAll(/\s+/g, " ");
    expect(text).toContain(` Chosen: - ${because} min until who`);
    expect(text).toMatch(/itself Pancakes: cook the pancakes oven 425°F/);
    expect(await ways("fog-bell-breakfast")).toEqual([
      { dish: "chickpea-pancakes", step: "cook-the-pancakes", way: "in the oven", because },
    ]);
  });

  it("[P109] where there is nothing to choose, nothing is told", async () => {
    expect(await plan("welcome-supper")).not.toContain("Chosen:");
    expect(await ways("welcome-supper")).toEqual([]);
  });
});
