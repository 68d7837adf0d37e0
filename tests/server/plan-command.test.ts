import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { PlanJson } from "../../server/cli/plan-json.ts";
import { planCommand } from "../../server/cli/plan.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import { ovenSupper } from "./oven-supper.ts";

let folder = "";
let out: string[] = [];
let told: string[] = [];

/** Ten in the morning on this machine's own clock, wherever the machine stands. */
const morning = new Date(2031, 4, 5, 10, 0);

beforeEach(() => {
  // Whatever was cooked in this checkout has no say.
  vi.stubEnv("STOVECALL_DATA", "no-such-folder");
  [out, told] = [[], []];
  folder = mkdtempSync(join(tmpdir(), "plan-"));
  vi.useFakeTimers({ now: morning, toFake: ["Date"] });
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const plan = (...words: readonly string[]): Promise<number> => runCli(["plan", ...words], [planCommand]);

async function planned(...words: readonly string[]): Promise<PlanJson> {
  out = [];
  expect([await plan(...words, "--json"), told, out.length]).toEqual([0, [], 1]);
  return JSON.parse(out[0] ?? "") as PlanJson;
}

/** The rows of the table below its head, cells trimmed, without the mark of what dinner waits for. */
function table(): readonly (readonly string[])[] {
  const head = out.findIndex((line) => /^ *(?:min|from) +until +who +what +where$/.test(line));
  const starts = ["until", "who", "what", "where"].map((word) => out[head]?.indexOf(word) ?? 0);
  const [until = 0, who = 0, what = 0, where = 0] = starts;
  const rows = out.slice(head + 1, out.indexOf("", head));
  return rows.map((row) => [
    row.slice(1, until - 2).trim(),
    row.slice(until - 2, who).trim(),
    row.slice(who, what).trim(),
    row.slice(what, where).trim(),
    row.slice(where).trim(),
  ]);
}

describe("the sheet for people", () => {
  it("[P40] by time: steps, the oven, moments that want the cook, dinner; 80 letters wide", async () => {
    expect(await plan("welcome-supper")).toBe(0);
    expect(out[0]).toMatch(/^Welcome Supper: dinner is ready \d+(?:\.5)? minutes after you begin\.$/);
    expect(out.filter((line) => line.length > 80 || line !== line.trimEnd())).toEqual([]);
    const rows = table().filter(([at]) => at !== "");
    const times = rows.map(([at]) => Number(at));
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    expect(times[0]).toBe(0);
    expect(rows.find((row) => row[3]?.startsWith("Turn the oven to"))).toMatchObject({
      2: "cook",
      4: "oven",
    });
    expect(rows.find((row) => row[3] === "Soup: chop the onion")).toMatchObject({ 2: "cook", 4: "" });
    expect(rows.find((row) => row[3] === "Soup: simmer the soup")).toMatchObject({
      2: "itself",
      4: "burner 1",
    });
    expect(rows.find((row) => row[3] === "Flatbreads: rest the dough")).toMatchObject({
      2: "itself",
      4: "counter",
    });
    expect(rows.filter((row) => row[1] === "" && row[3]?.startsWith("Soup: Stir")).length).toBeGreaterThan(2);
    expect(rows.at(-1)?.[3]).toBe("Dinner is ready");
    expect(told).toEqual([]);
  });

  it("[P41] for a serving time the times are those of the clock", async () => {
    expect(await plan("welcome-supper", "--serve", "18:30")).toBe(0);
    const [opening, from] = [out.slice(0, 2).join(" "), /begin at (\d\d:\d\d);/.exec(out[0] ?? "")?.[1]];
    expect(opening).toMatch(
      /^Welcome Supper: begin at 16:\d\d; dinner is ready at 18:\d\d, in time for 18:30\. /,
    );
    expect(table()[0]?.[0]).toBe(from);
    for (const [at = "", until = ""] of table()) expect([at, until].join("")).toMatch(/^(?:\d\d:\d\d){0,2}$/);
  });

  it("[P74] it tells how often dinner is in time, or how long it takes in eight of ten evenings", async () => {
    expect(await plan("welcome-supper")).toBe(0);
    const alone = /in eight of ten evenings it takes (\d+) to (\d+) minutes\./.exec(out.join(" "));
    expect(Number(alone?.[1])).toBeLessThan(Number(alone?.[2]));
    expect(await plan("welcome-supper", "--serve", "18:30")).toBe(0);
    expect(out.join(" ")).toMatch(/dinner is in time in \d+ of 100 evenings\./);
    expect((await planned("welcome-supper")).chanceOnTime).toBeNull();
    expect((await planned("welcome-supper", "--serve", "18:30")).chanceOnTime).toBeGreaterThan(0.5);
  });

  it("[P42] an oven's place says its heat, each turn its own", async () => {
    const meal = ovenSupper(folder);
    expect(await plan(meal)).toBe(0);
    const rows = table();
    const heats = new Map(rows.map((row) => [row[3], row[4]]));
    expect([heats.get("Bread: bake the bread"), heats.get("Custard: bake the custard")]).toEqual([
      "oven 450°F",
      "oven 300°F",
    ]);
    const turns = rows.filter((row) => row[3]?.startsWith("Turn the oven")).map((row) => row[3]);
    expect(turns.toSorted()).toEqual(["Turn the oven to 300°F", "Turn the oven to 450°F"]);
  });

  it("[P43] it tells what to take care of, and that no limit is broken or which", async () => {
    await plan("welcome-supper");
    expect(out).toContain("It breaks no limit.");
    expect(out).toContain("  - Flatbreads: Contains wheat.");
    expect(out.join(" ")).toContain("Never leave a hot stove alone.");
    out = [];
    await plan("welcome-supper", "--serve", "10:30");
    expect(out.join("\n")).toMatch(/\nWhat it breaks:\n {2}- Dinner will be .* later than you asked for\./);
  });
});

describe("the sheet for another program", () => {
  it("[P44] one object: steps with what they use, length, limits, oven", async () => {
    const sheet = await planned(ovenSupper(folder));
    expect(Object.keys(sheet).join(" ")).toBe(
      "steps elapsedMin broken onTime chanceOnTime ovenMoves ways leaveOut lull paces",
    );
    const bread = sheet.steps.find(({ step }) => step === "bake-the-bread");
    expect(bread).toMatchObject({
      dish: "bread",
      step: "bake-the-bread",
      start: bread?.start,
      end: (bread?.start ?? 0) + 20,
      uses: ["oven 450 F"],
    });
    expect(sheet.steps.find(({ step }) => step === "shape-the-bread")?.uses).toEqual(["cook"]);
    expect(sheet.ovenMoves.map(({ heat, oven }) => [heat, oven]).toSorted()).toEqual([
      ["300 F", "oven"],
      ["450 F", "oven"],
    ]);
    for (const { at, readyAt } of sheet.ovenMoves) expect(readyAt).toBeGreaterThan(at);
  });

  it("[P44] counts from the first act, to two decimals; the last end is the length", async () => {
    for (const words of [["welcome-supper"], ["welcome-supper", "--serve", "18:30"], [ovenSupper(folder)]]) {
      const { steps, ovenMoves, elapsedMin, onTime, broken } = await planned(...words);
      const starts = [...steps.map(({ start }) => start), ...ovenMoves.map(({ at }) => at)];
      expect([Math.min(...starts), Math.max(...steps.map(({ end }) => end))]).toEqual([0, elapsedMin]);
      for (const figure of [...starts, ...steps.map(({ end }) => end), elapsedMin])
        expect(String(figure)).toMatch(/^\d+(?:\.\d{1,2})?$/);
      expect([onTime, broken]).toEqual([true, []]);
    }
  });

  it("[P44] a step in batches stands once for each, and no two steps want the cook's hands at once", async () => {
    const { steps } = await planned("welcome-supper");
    const batches = steps.filter(({ step }) => step.startsWith("griddle-the-breads"));
    expect(batches.map(({ step }) => step)).toEqual([1, 2, 3].map((one) => `griddle-the-breads#${one}`));
    const hands = steps.filter(({ uses }) => uses.includes("cook"));
    for (const [index, { start }] of hands.entries())
      if (index > 0) expect(start).toBeGreaterThanOrEqual(hands[index - 1]?.end ?? 0);
  });
});

describe("the serving time", () => {
  it("[P45] the same sheet in the morning and at noon, a tenth before it has to be", async () => {
    const early = await planned("welcome-supper", "--serve", "18:30");
    vi.setSystemTime(new Date(2031, 4, 5, 12, 17, 31));
    expect(await planned("welcome-supper", "--serve", "18:30")).toEqual(early);
    expect(await planned("welcome-supper", "--serve", "6:30 pm")).toEqual(early);
    expect(await planned("welcome-supper", "--serve", "half past six")).toEqual(early);
    expect(early.elapsedMin).toBeLessThan(150);
  });

  it("[P46] one gone by is refused, with what to write instead", async () => {
    vi.setSystemTime(new Date(2031, 4, 5, 19, 5));
    expect([await plan("welcome-supper", "--serve", "18:30"), out]).toEqual([1, []]);
    const sentence = '18:30 is past: it is 19:05. Name a later time, or write --serve "tomorrow 18:30".';
    expect(told).toEqual([sentence]);
    expect(await plan("welcome-supper", "--serve", "tomorrow 00:30")).toBe(0);
    expect(out[0]).toContain("begin at 22:");
    expect(out.slice(0, 2).join(" ")).toContain("the day before; dinner is ready at 00:");
  });

  it("[P47] where there is no time left the soonest is planned and told", async () => {
    expect([await plan("welcome-supper", "--serve", "10:30"), told]).toEqual([0, []]);
    expect(out.slice(0, 2).join(" ")).toMatch(
      /^Welcome Supper: begin at 10:00; dinner is ready at 11:\d\d at the soonest, \d+ min after 10:30\.$/,
    );
    const soonest = await planned("welcome-supper");
    const late = await planned("welcome-supper", "--serve", "10:30");
    expect(late.onTime).toBe(false);
    expect(late.broken[0]).toMatch(/^Dinner will be .* later than you asked for\.$/);
    expect(late.elapsedMin).toBeLessThanOrEqual(soonest.elapsedMin + 1);
  });
});

describe("what plan cannot do", () => {
  it.each([
    [[], "Name the meal to plan, for instance: plan welcome-supper --serve 18:30"],
    [["a", "b"], 'plan takes one meal; "b" is one word too many.'],
    [["a", "--serve"], "--serve needs a value after it."],
    [["a", "--serve", "25:00"], '"25:00" is not a time of day. Write it like 18:30 after --serve.'],
    [["a", "--serve", ""], '"" is not a time of day. Write it like 18:30 after --serve.'],
    [["a", "--serve", "tomorrow"], '"tomorrow" is not a time of day. Write it like 18:30 after --serve.'],
    [["a", "--calendar", ""], "Name a file after --calendar, for instance: supper.ics"],
    [["a", "--from", "17:00"], "There is no option --from."],
  ])("[P48] %j is misuse", async (words, sentence) => {
    expect([await plan(...words), told, out]).toEqual([2, [sentence], []]);
  });

  it.each([
    [["feast"], /^There is no meal called feast\. There are: .*welcome-supper/],
    [["feast.yaml"], /^feast\.yaml does not lie in a folder called meals/],
  ])("[P48] %j is refused", async (words, sentence) => {
    expect([await plan(...words), out]).toEqual([1, []]);
    expect(told).toEqual([expect.stringMatching(sentence)]);
  });
});

describe("the calendar file", () => {
  const calendarHere = (): string => readFileSync(join(folder, "supper.ics"), "utf8");

  it("[P49] is written beside the sheet, and again over itself with the same UIDs", async () => {
    const file = join(folder, "supper.ics");
    expect(await plan("welcome-supper", "--serve", "18:30", "--calendar", file)).toBe(0);
    expect([told, out.length > 20]).toEqual([[`The calendar file is ${file}.`], true]);
    const first = calendarHere();
    expect(first.startsWith("BEGIN:VCALENDAR\r\n")).toBe(true);
    expect(first).toContain("UID:welcome-supper.serve@2031-05-05.stovecall\r\n");
    expect(await plan("welcome-supper", "--serve", "18:45", "--calendar", file, "--json")).toBe(0);
    const uids = (text: string): readonly string[] => (text.match(/^UID:.*(?:\r\n .*)*/gm) ?? []).toSorted();
    expect(uids(calendarHere())).toEqual(uids(first));
    expect(calendarHere()).not.toBe(first);
    expect(readdirSync(folder)).toEqual(["supper.ics"]);
  });

  it("[P49] holds the moments that the sheet tells", async () => {
    const file = join(folder, "supper.ics");
    await plan("welcome-supper", "--serve", "18:30", "--calendar", file);
    const served = new Date(2031, 4, 5, 18, 30).toISOString().replace(/[-:]|\.\d+/g, "");
    expect(calendarHere()).toContain(`DTSTART:${served}\r\n`);
    const turns = out.filter((line) => line.includes("Turn the oven")).length;
    expect(calendarHere().match(/^SUMMARY:Turn the oven/gm)).toHaveLength(turns);
  });

  it("[P49] a link is followed to a file of our own, and is refused where it leads nowhere", async () => {
    const [file, link, lost] = ["supper.ics", "link.ics", "lost.ics"].map((name) => join(folder, name));
    await plan("welcome-supper", "--calendar", file ?? "");
    symlinkSync(file ?? "", link ?? "");
    symlinkSync(join(folder, "gone.ics"), lost ?? "");
    expect(await plan("welcome-supper", "--serve", "18:30", "--calendar", link ?? "")).toBe(0);
    expect([lstatSync(link ?? "").isSymbolicLink(), calendarHere()]).toEqual([
      true,
      expect.stringContaining("DTSTART"),
    ]);
    told = [];
    expect(await plan("welcome-supper", "--calendar", lost ?? "")).toBe(1);
    expect(told).toEqual([`${lost ?? ""} leads nowhere. Name another after --calendar.`]);
    expect(readdirSync(folder).toSorted()).toEqual(["link.ics", "lost.ics", "supper.ics"]);
  });

  it.each([
    ["notes.txt", /^.*notes\.txt is there already and holds something else\. Name another file/],
    ["drawer", /^.*drawer is no ordinary file\. Name another/],
    ["nowhere/supper.ics", /cannot be written: there is no such folder\. Name another after --calendar\.$/],
    ["notes.txt/supper.ics", /cannot be written: what should be its folder is a file\./],
    [`${"long".repeat(100)}.ics`, /cannot be written: its name is too long\./],
  ])(
    "[P49] %s is refused in one sentence; the sheet is printed and nothing is lost",
    async (name, sentence) => {
      writeFileSync(join(folder, "notes.txt"), "grandmother's notes");
      mkdirSync(join(folder, "drawer"));
      expect(await plan("welcome-supper", "--calendar", join(folder, name))).toBe(1);
      expect(told).toEqual([expect.stringMatching(sentence)]);
      expect(out.length).toBeGreaterThan(20);
      expect(readFileSync(join(folder, "notes.txt"), "utf8")).toBe("grandmother's notes");
      expect(readdirSync(folder).toSorted()).toEqual(["drawer", "notes.txt"]);
      expect(existsSync(join(folder, "drawer", "supper.ics"))).toBe(false);
    },
  );
});
