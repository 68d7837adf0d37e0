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
  folder = mkdtempSync(join(tmpdir(), "plan-leave-out-"));
  // Ten in the morning on this machine's own clock, wherever the machine stands.
  vi.useFakeTimers({ now: new Date(2031, 4, 5, 10, 0), toFake: ["Date"] });
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

async function printed(...words: readonly string[]): Promise<readonly string[]> {
  out = [];
  expect(await runCli(["plan", ...words], [planCommand])).toBe(0);
  return out;
}
const planned = async (...words: readonly string[]): Promise<PlanJson> =>
  JSON.parse((await printed(...words, "--json")).join("")) as PlanJson;

/** What stands between the opening and the outlook. */
async function offer(...words: readonly string[]): Promise<string> {
  const text = (await printed(...words)).join(" ");
  return / min after \d\d:\d\d\. (.*?) ?Steps take now shorter/.exec(text)?.[1]?.trim() ?? "no such place";
}

describe("a serving time that cannot be kept", () => {
  it("[P115] one sentence tells without which dish it could be ready, and when", async () => {
    // From 70 F at 20 F a minute the oven is at 450 F after 19 minutes, at 300 F after 11.5; the loaf bakes for 20, the
    // custard for 30: the one alone takes 39 minutes, the other 41.5.
    const meal = ovenSupper(folder);
    expect(await offer(meal, "--serve", "10:45")).toBe(
      "Without the custard it could be ready at 10:39, without the bread at 10:41.",
    );
    const sheet = await planned(meal, "--serve", "10:45");
    expect(sheet.leaveOut).toEqual([
      { dishes: ["custard"], readyMin: 39 },
      { dishes: ["bread"], readyMin: 41.5 },
    ]);
    expect([sheet.onTime, sheet.steps.length]).toEqual([false, 4]);
  });

  it("[P115] where no one dish is enough it says so, and what two bring where they bring more", async () => {
    expect(await offer(ovenSupper(folder), "--serve", "10:30")).toBe(
      "Leaving out one dish is not enough; without the custard it could be ready at 10:39.",
    );
    expect(await offer("welcome-supper", "--serve", "10:30")).toMatch(
      /^Leaving out one dish is not enough; without the \w+ it could be ready at 1\d:\d\d, without the \w+ and the \w+ at 1\d:\d\d\.$/,
    );
    const [pair, ...ones] = (await planned("welcome-supper", "--serve", "10:30")).leaveOut;
    expect(pair?.dishes).toHaveLength(2);
    for (const { dishes, readyMin } of ones) {
      expect(dishes).toHaveLength(1);
      expect(readyMin).toBeGreaterThan(pair?.readyMin ?? Infinity);
    }
    const lines = await printed("welcome-supper", "--serve", "10:30");
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });

  it("[P115] in time, or without a serving time, nothing is offered", async () => {
    for (const words of [["welcome-supper"], ["welcome-supper", "--serve", "18:30"]]) {
      expect((await planned(...words)).leaveOut).toEqual([]);
      expect((await printed(...words)).join(" ")).not.toMatch(/could be ready|Leaving out/);
    }
  });
});
