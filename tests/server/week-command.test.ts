import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { emptyHouseLog } from "../../core/house/house.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import type { WeekJson } from "../../server/cli/week-json.ts";
import { weekCommand } from "../../server/cli/week.ts";
import { keepHouse } from "./kept-house.ts";

let folder = "";
let out: string[] = [];
let told: string[] = [];
beforeEach(() => {
  [out, told] = [[], []];
  folder = mkdtempSync(join(tmpdir(), "week-"));
  keepHouse(folder, emptyHouseLog);
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const week = (...words: readonly string[]): Promise<number> =>
  runCli(["week", ...words, "--data", folder], [weekCommand]);

it("[D44] the week that ships, for people: day by day, what is left, one list; 80 letters wide", async () => {
  // The supper has an ingredient without figures that may be left out, so nobody can say yes to all of it.
  expect([await week("tide-week"), told]).toEqual([1, []]);
  expect(out.filter((line) => line.length > 80 || line !== line.trimEnd())).toEqual([]);
  const text = out.join(" ").replace(/ +/g, " ");
  expect(out[0]).toBe("A Week of Tides, for 2");
  expect(text).toContain("Tuesday what is left of Smoky Lentil Soup, allowed");
  expect(text).toContain("The whole week: I cannot tell.");
  expect(text).toContain(
    "2 servings of Crisp Cabbage Salad from monday are in no meal: eat by thursday or freeze",
  );
  expect(text).toContain("What to buy for Welcome Supper and Slack Water Lunch");
  expect(text).toMatch(/garlic: 9 cloves, about a head/);
  expect(text).toContain("This is no medical advice");
});

it("[D44] for programs, and what is in the house comes off the list", async () => {
  const have = join(folder, "have.txt");
  writeFileSync(have, "9 cloves garlic\nhalf a moon\n");
  expect(await week("tide-week", "--have", have, "--json")).toBe(1);
  expect(told).toEqual([]);
  const answer = JSON.parse(out[0] ?? "") as WeekJson;
  expect([answer.verdict, answer.eaters]).toEqual(["cannot-tell", 2]);
  expect(answer.days.map(({ day, sittings }) => [day, sittings.length])).toEqual([
    ["monday", 1],
    ["tuesday", 2],
    ["thursday", 1],
    ["friday", 2],
  ]);
  expect(answer.shop.enough.map(({ name }) => name)).toContain("garlic");
  expect(answer.unused.length).toBe(6);
});

it.each([
  [[], 2, "Name the week to check, for instance: week tide-week"],
  [["one", "two"], 2, 'week takes one week; "two" is one word too many.'],
  [["nowhere"], 1, "There is no week nowhere. Name one in recipes/weeks, or the path of its file."],
  [["tide-week", "--have", "nowhere.txt"], 1, "nowhere.txt cannot be read."],
])("[D44] %j ends with %d: %s", async (words, code, sentence) => {
  expect([await week(...words), told.join(" "), out]).toEqual([code, expect.stringContaining(sentence), []]);
});

it("[D44] a meal that is not there, and a mistake in the file, are told with their place", async () => {
  const file = join(folder, "w.yaml");
  writeFileSync(file, "week: W\neaters: 2\ndays:\n  monday: [nowhere]\n");
  expect([await week(file), told.pop()]).toEqual([
    1,
    expect.stringContaining("On monday: There is no meal called nowhere."),
  ]);
  writeFileSync(file, "week: W\neaters: many\ndays:\n  monday: [a]\n");
  expect([await week(file), told.pop()]).toEqual([1, expect.stringContaining("weeks/w.yaml, line 2:")]);
});
