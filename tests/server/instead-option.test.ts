import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { MealCheckJson } from "../../server/cli/check-json.ts";
import { checkCommand } from "../../server/cli/check.ts";
import { planCommand } from "../../server/cli/plan.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import { shopCommand } from "../../server/cli/shop.ts";
import { valuesCommand } from "../../server/cli/values.ts";

let folder = "";
let out: string[] = [];
let told: string[] = [];
beforeEach(() => {
  [out, told] = [[], []];
  folder = mkdtempSync(join(tmpdir(), "instead-"));
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(text));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const commands = [checkCommand, planCommand, shopCommand, valuesCommand];
const run = (...words: readonly string[]): Promise<number> => {
  out = [];
  return runCli(words, commands);
};
const here = (): readonly string[] => ["--data", folder];
const raisins = ["--instead", "raisins=prunes"];

describe("one thing taken for another on the command line", () => {
  it("[D33] the check no longer finds it, the list and the values have the other", async () => {
    expect(await run("check", "fog-bell-breakfast", ...here(), ...raisins, "--json")).toBe(0);
    expect((JSON.parse(out[0] ?? "") as MealCheckJson).findings).toEqual([]);
    await run("shop", "fog-bell-breakfast", ...here(), ...raisins);
    expect([out.join(" ").includes("prunes:"), out.join(" ").includes("raisins")]).toEqual([true, false]);
    expect(await run("values", "fog-bell-breakfast", ...raisins)).toBe(0);
    expect([out.join(" ").includes("prunes (09291)"), out.join(" ").includes("raisins")]).toEqual([
      true,
      false,
    ]);
  });

  it("[D33] dinner is later where it cooks longer", async () => {
    const elapsed = async (...more: readonly string[]): Promise<number> => {
      expect(await run("plan", "welcome-supper", ...here(), "--json", ...more)).toBe(0);
      return (JSON.parse(out[0] ?? "") as { readonly elapsedMin: number }).elapsedMin;
    };
    expect(await elapsed("--instead", "red lentils=brown lentils")).toBeGreaterThan(await elapsed());
  });

  it.each([
    [2, "raisins", '--instead takes two foods, for instance: --instead "chili powder=paprika"'],
    [1, "raisins=pebbles", "Nobody offers pebbles instead of raisins. There is: prunes."],
    [1, "sand=prunes", "Nothing that you cook has sand in it."],
  ])("[D33] ends with %i for %s: %s", async (code, word, sentence) => {
    for (const command of ["check", "values", "plan", "shop"]) {
      told = [];
      const more = command === "values" ? [] : here();
      expect([command, await run(command, "fog-bell-breakfast", "--instead", word, ...more)]).toEqual([
        command,
        code,
      ]);
      expect([out, told.at(-1)]).toEqual([[], sentence]);
    }
  });
});
