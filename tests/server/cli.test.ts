import { execFile } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { amountsCommand } from "../../server/cli/amounts.ts";
import { hearCommand } from "../../server/cli/hear.ts";
import { leftCommand } from "../../server/cli/left.ts";
import { miseCommand } from "../../server/cli/mise.ts";
import { modelsCommand } from "../../server/cli/models.ts";
import { paceCommand } from "../../server/cli/pace.ts";
import { planCommand } from "../../server/cli/plan.ts";
import { rehearseCommand } from "../../server/cli/rehearse.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import { serveCommand } from "../../server/cli/serve.ts";
import { checkCommand } from "../../server/cli/check.ts";
import { shopCommand } from "../../server/cli/shop.ts";
import { valuesCommand } from "../../server/cli/values.ts";
import { weekCommand } from "../../server/cli/week.ts";
import { speak } from "../voice/synthetic-voices.ts";

const root = join(import.meta.dirname, "..", "..");
const commands = [
  serveCommand,
  planCommand,
  rehearseCommand,
  hearCommand,
  paceCommand,
  valuesCommand,
  checkCommand,
  amountsCommand,
  shopCommand,
  weekCommand,
  leftCommand,
  miseCommand,
  modelsCommand,
];
let folder = "";
let out: string[] = [];
let told: string[] = [];

const write = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "cli-"));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});
beforeEach(() => {
  [out, told] = [[], []];
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.restoreAllMocks();
});

const cli = (...words: readonly string[]): Promise<number> => runCli(words, commands);

describe("help and misuse", () => {
  it("[N70] the commands are listed, and each explains itself", async () => {
    expect([await cli(), await cli("--help"), told]).toEqual([2, 0, []]);
    for (const { name } of commands) expect(out.some((line) => line.startsWith(`  ${name} `))).toBe(true);
    for (const { name } of commands) {
      out = [];
      expect(await cli(name, "--help")).toBe(0);
      expect(out[0]).toMatch(new RegExp(`^${name}`));
    }
  });

  it.each([
    [
      ["roast"],
      "There is no command roast. There are: serve, plan, rehearse, hear, pace, values, check, amounts, shop, week, left, mise, models.",
    ],
    [["serve", "--loud"], "There is no option --loud."],
    [["serve", "-x"], "There is no option -x."],
    [["serve", "now"], 'serve takes no file; "now" is one word too many.'],
    [["serve", "--port"], "--port needs a value after it."],
    [["serve", "--port", "99999"], '"99999" is not a port. Write a number from 0 to 65535 after --port.'],
    [["serve", "--open=yes"], "--open takes no value."],
    [["rehearse"], "Name the meal to rehearse, for instance: rehearse welcome-supper --say SCRIPT"],
    [["rehearse", "welcome-supper"], "Name the script after --say."],
    [["rehearse", "a", "b", "--say", "c"], 'rehearse takes one meal; "b" is one word too many.'],
    [
      ["rehearse", "a", "--say", "c", "--from", "noon"],
      '"noon" is not a time of day. Write it like 17:00 after --from.',
    ],
    [["hear"], "Name one recording or more, for instance: hear what-now.wav"],
    [["hear", "a.wav", "--address", "42"], '"42" cannot be an address. Write words after --address.'],
  ])("[N71] %j is misuse, told in one sentence", async (words, sentence) => {
    expect([await cli(...words), told, out]).toEqual([2, [sentence], []]);
  });

  it.each([
    [["rehearse", "feast", "--say", "x.txt"], /^There is no meal called feast\. There are: .*welcome-supper/],
    [["rehearse", "feast.yaml", "--say", "x.txt"], /^feast\.yaml does not lie in a folder called meals/],
    [["rehearse", "welcome-supper", "--say", "/nowhere.txt"], /^The script \/nowhere\.txt cannot be read\./],
    [["hear", "/nowhere.wav"], /^The file \/nowhere\.wav cannot be read\./],
    [["hear", "a.wav", "--meal", "feast"], /^There is no meal called feast\./],
  ])("[N72] %j is refused with one sentence", async (words, sentence) => {
    expect([await cli(...words), out]).toEqual([1, []]);
    expect(told).toEqual([expect.stringMatching(sentence)]);
  });

  it("[N72] the program itself ends with these codes, data on one stream and messages on the other", async () => {
    const run = (...args: readonly string[]) =>
      new Promise((resolve) => {
        execFile(
          process.execPath,
          ["--import", "tsx", "server/main.ts", ...args],
          { cwd: root },
          (error, stdout, stderr) => resolve([error?.code ?? 0, stdout, stderr]),
        );
      });
    expect(await run("roast")).toEqual([
      2,
      "",
      "There is no command roast. There are: serve, plan, rehearse, hear, pace, values, check, amounts, shop, week, left, mise, models.\n",
    ]);
    expect(await run("hear", "/nowhere.wav")).toEqual([
      1,
      "",
      expect.stringMatching(/^The file .nowhere.wav cannot be read/),
    ]);
  }, 60_000);
});

describe("rehearse", () => {
  it("[N74] prints the conversation for people, and one object a line with --json", async () => {
    const script = write("short.txt", "what now\nsing me a song\n");
    const meal = join(root, "recipes", "meals", "welcome-supper.yaml");
    expect(await cli("rehearse", meal, "--say", script, "--from", "16:30", "--serve", "18:45")).toBe(0);
    expect(out[1]).toBe("16:30:05  cook      what now");
    expect(out.at(-1)).toBe("The cook spoke 2 times; 1 not understood, 0 refused.");
    out = [];
    expect(
      await cli(
        "rehearse",
        "welcome-supper",
        "--say",
        script,
        "--from",
        "16:30",
        "--serve",
        "18:45",
        "--json",
      ),
    ).toBe(0);
    const objects = out.map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(objects[1]).toEqual({ who: "cook", at: "16:30:05", said: "what now", intent: "WhatNow" });
    expect(objects.at(-1)).toMatchObject({
      summary: { meal: "Welcome Supper", wanted: "18:45", notUnderstood: ["sing me a song"] },
    });
    expect(told).toEqual([]);
  });

  it("[N77] hears a recording in the middle of a meal", async () => {
    const [done] = await speak("slt", ["listen kitchen, what now"]);
    const script = write("spoken.txt", `hear ${done ?? ""}`);
    expect(await cli("rehearse", "welcome-supper", "--say", script)).toBe(0);
    expect(out[1]).toMatch(/ {2}cook {6}what now$/);
  }, 60_000);
});

describe("hear", () => {
  it("[N76] tells what was heard and understood, an object a line, null where there was no command", async () => {
    const files = await speak("slt", [
      "listen kitchen, what now",
      "listen kitchen, how much lemon juice",
      "we had such a nice holiday",
    ]);
    expect(await cli("hear", ...files, "--meal", "welcome-supper", "--json")).toBe(0);
    const objects = out.map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(objects).toEqual([
      { file: files[0], heard: "what now", intent: "WhatNow", say: expect.stringMatching(/\.$/) as string },
      {
        file: files[1],
        heard: "how much lemon juice",
        intent: "HowMuch",
        say: expect.stringContaining("lemon juice") as string,
      },
      { file: files[2], heard: null, intent: null },
    ]);
  }, 60_000);

  it("[N76] one file that cannot be read does not keep the others from being heard", async () => {
    const [file] = await speak("slt", ["listen kitchen, what now"]);
    expect(await cli("hear", write("no.wav", "no sound"), file ?? "")).toBe(1);
    expect(told).toHaveLength(1);
    expect(out[0]).toBe(`${file ?? ""}: "what now"`);
  }, 60_000);
});
