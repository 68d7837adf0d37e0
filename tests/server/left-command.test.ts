import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { leftoverId } from "../../core/house/leftover.ts";
import type { FridgeJson } from "../../server/cli/left-json.ts";
import { leftCommand } from "../../server/cli/left.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import { dayFigure } from "../../server/kitchen/wall.ts";
import { holdLog } from "../../server/store/hold-log.ts";
import { at } from "../core/cook/supper.ts";
import { afterSupper, servings, store } from "../core/house/house-at.ts";
import { keepHouse, keptEvents } from "./kept-house.ts";
import { startProcess } from "./server-process.ts";

const day = 60 * 24;
let folder = "";
let out: string[] = [];
let told: string[] = [];

beforeEach(() => {
  [out, told] = [[], []];
  folder = mkdtempSync(join(tmpdir(), "left-"));
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
  keepHouse(
    folder,
    afterSupper(
      [130, store("soup", servings(3))],
      [131, store("pilaf", servings(1))],
      [132, store("salad", servings(3, 2), "freezer")],
    ),
  );
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

/** At a minute after five on the evening of the supper. */
function left(minute: number, ...words: readonly string[]): Promise<number> {
  vi.useFakeTimers({ now: at(minute), toFake: ["Date"] });
  [out, told] = [[], []];
  return runCli(["left", ...words, "--data", folder], [leftCommand]);
}

async function json(minute: number, ...words: readonly string[]): Promise<FridgeJson> {
  expect(await left(minute, ...words, "--json"), told.join(" ")).toBe(0);
  expect(out).toHaveLength(1);
  return JSON.parse(out[0] ?? "") as FridgeJson;
}

const rests = ({ left: all }: FridgeJson) =>
  all.map(({ name, servings: count, amount }) => [name, count ?? amount]);

describe("what is left, told", () => {
  it("[H11] what to use first, each with its use-by and whose figure that is; 80 letters wide", async () => {
    expect([await left(140), told]).toEqual([0, []]);
    expect(out.filter((line) => [...line].length > 80 || line !== line.trimEnd())).toEqual([]);
    expect(out[0]).toBe(`Use first: Tide pilaf, 1 bowl, use by ${dayFigure(at(60 + day))}.`);
    const text = out.join(" ").replaceAll(/ +/g, " ");
    expect(text).toContain("FRIDGE Tide pilaf 1 bowl use by");
    // Sources: USDA FSIS, Leftovers and Food Safety; UK Food Standards Agency on rice.
    expect(text).toContain(`Tide soup 3 bowls use by ${dayFigure(at(60 + day * 3))} (USDA FSIS`);
    expect(text).toContain("FREEZER Tide salad 1 1/2 plates");
    expect(text).toMatch(/165 °F all through, once.*clinician, go first\.$/);
  });

  it("[H11] what was kept too long comes before all else, and what was heated is to be eaten now", async () => {
    await left(day * 2);
    expect(out[0]).toMatch(/^Throw away: Tide pilaf, 1 bowl, past its day, /);
    expect(out.join(" ")).toMatch(/Use first: Tide soup, 3 bowls/);
    await left(day * 2, "heated", "tide soup", "--servings", "2");
    expect(told[0]).toMatch(/^Heated: Tide soup\. 165 °F all through/);
    const text = out.join(" ").replaceAll(/ +/g, " ");
    expect(text).toMatch(/Eat now: Tide soup, 2 bowls, heated at \d+:\d\d [ap]m on [^:]*\. Use first/);
    await left(day * 2 + 130);
    expect(out.join(" ").replaceAll(/ +/g, " ")).toMatch(/Throw away: .*Tide soup, 2 bowls, heated at/);
  });

  it("[H12] the same for another program: whole moments, and null for what is not known", async () => {
    await json(140, "put", "a pie of grandmother's", "--amount", "half of it");
    const { left: all, useFirst, throwAway, now, caution } = await json(150);
    expect([now, throwAway]).toEqual([new Date(at(150)).toISOString(), []]);
    expect(caution).toContain("165 °F");
    expect(all.map(({ name }) => name)).toEqual([
      "Tide pilaf",
      "a pie of grandmother's",
      "Tide soup",
      "Tide salad",
    ]);
    expect(all[0]).toEqual({
      id: "pilaf",
      name: "Tide pilaf",
      dish: "pilaf",
      place: "fridge",
      servings: 1,
      servingsOf: "bowls",
      amount: null,
      storedAt: new Date(at(131)).toISOString(),
      useBy: new Date(at(60 + day)).toISOString(),
      source: "UK Food Standards Agency and NHS on reheating rice",
      isKnown: true,
      heatedAt: null,
      standing: "good",
    });
    expect(useFirst).toBe("pilaf");
    expect(all[1]).toMatchObject({ dish: null, servings: null, amount: "half of it", isKnown: false });
    const later = await json(day * 2);
    expect([later.throwAway.length, later.left[0]?.standing, later.useFirst]).toEqual([2, "spent", "soup"]);
  });

  it("[H12] an empty house, and a folder without a log", async () => {
    const bare = mkdtempSync(join(tmpdir(), "bare-"));
    expect(await runCli(["left", "--data", bare], [leftCommand])).toBe(1);
    expect(await runCli(["left", "put", "rice", "--data", bare], [leftCommand])).toBe(1);
    const sentence = `There is no meal log in ${bare}. Cook a meal first, or name its folder after --data.`;
    expect([told, readdirSync(bare)]).toEqual([[sentence, sentence], []]);
    keepHouse(bare, afterSupper());
    expect(await runCli(["left", "--data", bare], [leftCommand])).toBe(0);
    expect(out).toEqual(["Nothing is left in the fridge or the freezer, as far as is known."]);
    rmSync(bare, { recursive: true });
  });
});

describe("what is left, changed", () => {
  it("[H13] a dish of the last meal is put in, by any of its names, with what guidance says of it", async () => {
    // Ready at six; three days from then (USDA FSIS, the shorter of "3 to 4").
    const { left: all } = await json(170, "put", "soup", "--servings", "1");
    expect(told).toEqual([`In the fridge: Tide soup, 1 bowl, use by ${dayFigure(at(60 + day * 3))}.`]);
    expect(all.filter(({ dish }) => dish === "soup").map(({ useBy }) => useBy)).toEqual(
      Array.from({ length: 2 }, () => new Date(at(60 + day * 3)).toISOString()),
    );
    await left(200, "put", "Tide", "salad", "--servings", "1/2", "--in", "freezer");
    expect(told[0]).toMatch(
      /^It was ready more than two hours ago: unless you kept it hot or cold, throw it away\./,
    );
    expect(await left(210, "put", "soup", "--servings", "2")).toBe(1);
    expect(told).toEqual(["All that was made of it was put away already: Tide soup."]);
  });

  it("[H13] anything else by a name of the cook's, with the strictest day and a warning that it is not known", async () => {
    await left(140, "put", "cooked", "rice", "--amount", "3 cups");
    expect(told).toEqual([`In the fridge: cooked rice, 3 cups, use by ${dayFigure(at(140 + day))}.`]);
    expect(out.join(" ").replaceAll(/ +/g, " ")).toContain("not all that is in it is known");
    const { left: all } = await json(150, "put", "broth");
    expect(all.find(({ name }) => name === "broth")).toMatchObject({ servings: null, amount: "some" });
  });

  it("[H14] eaten, heated and thrown away, all of it or some, and undone", async () => {
    expect(rests(await json(day, "eaten", "soup", "--servings", "1"))).toContainEqual(["Tide soup", 2]);
    expect(told).toEqual(["Eaten: Tide soup. Left of it: 2 bowls."]);
    expect(rests(await json(day + 1, "heated", "soup", "--servings", "1/2"))).toEqual([
      ["Tide pilaf", 1],
      ["Tide soup", 0.5],
      ["Tide soup", 1.5],
      ["Tide salad", 1.5],
    ]);
    // What was heated goes first.
    expect(rests(await json(day + 2, "eaten", "tide soup")).filter(([name]) => name === "Tide soup")).toEqual(
      [["Tide soup", 1.5]],
    );
    expect(rests(await json(day + 3, "undo")).filter(([name]) => name === "Tide soup")).toHaveLength(2);
    expect(rests(await json(day + 4, "thrown", "tide salad"))).not.toContainEqual(["Tide salad", 1.5]);
    expect(rests(await json(day + 5, "undo"))).toContainEqual(["Tide salad", 1.5]);
    expect(rests(await json(day + 6, "thrown", "pilaf"))).toHaveLength(3);
  });

  it("[H14] what was heated is not heated again, nor put in again, nor is what is past its day heated", async () => {
    await left(day, "heated", "soup");
    expect(await left(day + 1, "heated", "soup")).toBe(1);
    expect(told).toEqual([
      expect.stringMatching(/^It was heated before: Tide soup\..*judge for yourself\.$/),
    ]);
    expect(await left(day + 2, "put", "soup", "--servings", "1")).toBe(1);
    expect(told).toEqual([expect.stringMatching(/^It was heated: Tide soup\..*not kept a second time\.$/)]);
    expect(await left(day * 3, "heated", "pilaf")).toBe(1);
    expect(told).toEqual(["Tide pilaf is past its day: throw it away."]);
  });

  it("[H15] while a server holds the log nothing is changed, but it is told what is there", async () => {
    const before = keptEvents(folder);
    const hold = holdLog(folder);
    expect(await left(140, "eaten", "soup")).toBe(1);
    expect([told, out]).toEqual([
      [
        `Stovecall is running with the log in ${folder}, so nothing was changed. Say it to its page, or stop it first.`,
      ],
      [],
    ]);
    expect(await left(140)).toBe(0);
    expect(keptEvents(folder)).toEqual(before);
    if (hold.ok) hold.value();
    expect(await left(140, "eaten", "soup")).toBe(0);
    expect(keptEvents(folder)).toHaveLength(before.length + 1);
  });

  it("[H15] a real server: refused beside it, and what was changed before it starts is seen by it", async () => {
    expect(await left(140, "eaten", "soup", "--servings", "1")).toBe(0);
    vi.useRealTimers();
    const first = await startProcess(folder);
    expect(await runCli(["left", "thrown", "soup", "--data", folder], [leftCommand])).toBe(1);
    expect(await runCli(["left", "--data", folder], [leftCommand])).toBe(0);
    await first.kill("SIGTERM");
    expect(await runCli(["left", "thrown", "soup", "--data", folder], [leftCommand])).toBe(0);
    const events = keptEvents(folder);
    expect(events.map(({ seq }) => seq)).toEqual(events.map((_, index) => index + 1));
    expect(events.at(-1)?.happening).toEqual({ type: "LeftoverThrownAway", id: leftoverId("soup") });
    const second = await startProcess(folder);
    await second.kill("SIGTERM");
    expect(keptEvents(folder)).toEqual(events);
  });

  it.each([
    [["eat", "soup"], 2, 'left knows put, eaten, heated, thrown, undo, and no "eat".'],
    [["eaten"], 2, "Name what it is, for instance: left eaten lentil-soup"],
    [["undo", "soup"], 2, 'left undo takes no name; "soup" is too much.'],
    [
      ["--servings", "2"],
      2,
      "--servings belongs to what is changed, for instance: left put lentil-soup --servings 3",
    ],
    [["thrown", "soup", "--servings", "2"], 2, '--servings does not belong to "left thrown".'],
    [
      ["put", "soup", "--servings", "lots"],
      2,
      '--servings takes a number, for instance 2, 1.5 or 1/2; "lots" is none.',
    ],
    [["put", "soup", "--in", "cellar"], 2, '--in takes fridge or freezer, not "cellar".'],
    [["put", "soup", "--servings", "1", "--amount", "x"], 2, "Give either --servings or --amount, not both."],
    [
      ["eaten", "cake"],
      1,
      "Nothing is left that is called cake. There is: Tide pilaf, Tide soup, Tide salad.",
    ],
    [["eaten", "tide"], 1, "Which one: Tide pilaf, Tide soup, Tide salad? Give its whole name."],
    [["put", "tide"], 1, "Which one: Tide soup, Tide pilaf, Tide salad, Tide mystery? Give its whole name."],
    [
      ["eaten", "soup", "--servings", "9"],
      1,
      'There were only three bowls of this: Tide soup. Say "we ate the rest" if it is gone.',
    ],
  ])("[H16] %j ends with %i and one sentence, and changes nothing", async (words, code, sentence) => {
    const before = keptEvents(folder);
    expect([await left(140, ...words), told, out]).toEqual([code, [sentence], []]);
    expect(keptEvents(folder)).toEqual(before);
  });

  it("[H16] a log that is damaged is told", async () => {
    writeFileSync(
      join(folder, "stovecall.db"),
      "no log at all, and long enough to be taken for one".repeat(40),
    );
    expect([await left(140), out]).toEqual([1, []]);
    expect(told).toEqual([expect.stringMatching(/is damaged/)]);
  });
});
