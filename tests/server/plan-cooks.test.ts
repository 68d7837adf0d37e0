import { afterEach, beforeEach, expect, it, vi } from "vitest";
import type { PlanJson } from "../../server/cli/plan-json.ts";
import { planCommand } from "../../server/cli/plan.ts";
import { runCli } from "../../server/cli/run-cli.ts";

let out: string[] = [];
let told: string[] = [];

beforeEach(() => {
  [out, told] = [[], []];
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => vi.restoreAllMocks());

const plan = (...words: readonly string[]): Promise<number> =>
  runCli(["plan", "welcome-supper", ...words], [planCommand]);

async function planned(...words: readonly string[]): Promise<PlanJson> {
  out = [];
  expect(await plan("--json", ...words)).toBe(0);
  return JSON.parse(out[0] ?? "") as PlanJson;
}

it("[P167] with --cooks it tells who does what, and dinner is sooner where hands were what it waited for", async () => {
  const [alone, three] = [await planned(), await planned("--cooks", "3")];
  expect(three.elapsedMin).toBeLessThan(alone.elapsedMin);
  expect(new Set(three.steps.flatMap(({ uses }) => uses)).has("second helper")).toBe(true);
  out = [];
  expect(await plan("--cooks", "2")).toBe(0);
  const head = out.find((line) => line.includes("until  who")) ?? "";
  const [who, what] = [head.indexOf("who"), head.indexOf("what")];
  const rows = out.slice(out.indexOf(head) + 1, out.indexOf("", out.indexOf(head)));
  expect(new Set(rows.map((row) => row.slice(who, what).trim()))).toEqual(
    new Set(["cook", "helper", "itself", ""]),
  );
});

it("[P167] another number of cooks is refused in one sentence", async () => {
  expect([await plan("--cooks", "4"), await plan("--cooks", "two")]).toEqual([2, 2]);
  expect(told).toEqual([
    '--cooks takes a number from 1 to 3; "4" is none.',
    '--cooks takes a number from 1 to 3; "two" is none.',
  ]);
});
