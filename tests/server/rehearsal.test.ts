import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { minutes, plus } from "../../core/units/quantity.ts";
import { err, ok } from "../../core/units/result.ts";
import { findMeal } from "../../server/cli/find-meal.ts";
import { inProgram } from "../../server/cli/in-program.ts";
import { clockSecond } from "../../server/rehearsal/clock-time.ts";
import { rehearse } from "../../server/rehearsal/rehearse.ts";
import { readScript } from "../../server/rehearsal/script.ts";
import type { Turn, View } from "../../server/rehearsal/stage.ts";
import { summaryOf, type Summary } from "../../server/rehearsal/summary.ts";
import { smallMeal } from "./small-meal.ts";

type Played = { readonly turns: readonly string[]; readonly summary: Summary };

/** Plays a script on the small meal from five o'clock; each turn as "17:00:05 cook done". */
async function play(text: string, serveAt: number | null = null): Promise<Played | string> {
  const script = readScript(text);
  if (!script.ok) return script.error;
  const turns: Turn[] = [];
  const hear = (file: string) =>
    Promise.resolve(
      file === "done.wav"
        ? ok("done")
        : file === "chatter.wav"
          ? ok(null)
          : err(`The file ${file} cannot be read.`),
    );
  const tell = (turn: Turn): void => void turns.push(turn);
  const view = await rehearse({ meal: smallMeal, from: 17 * 60, serveAt, script: script.value, hear, tell });
  if (!view.ok) return view.error;
  const told = turns.map((turn) => {
    const who = turn.who === "caller" && turn.how !== "answer" ? turn.how : turn.who;
    return `${clockSecond(turn.at)} ${who} ${turn.said}`;
  });
  return { turns: told, summary: summaryOf(view.value, turns) };
}

async function played(text: string, serveAt: number | null = null): Promise<Played> {
  const result = await play(text, serveAt);
  if (typeof result === "string") throw new Error(result);
  return result;
}

/** An evening in which nothing is left to chance but the recipes: read, begun early enough, and cooked. */
async function supper(): Promise<{
  readonly turns: readonly Turn[];
  readonly view: View;
  readonly summary: Summary;
}> {
  const found = await findMeal("welcome-supper");
  const script = readScript(await readFile(inProgram("recipes/rehearsals/welcome-supper.txt"), "utf8"));
  if (!found.ok || !script.ok) throw new Error("the welcome supper cannot be read");
  const turns: Turn[] = [];
  const tell = (turn: Turn): void => void turns.push(turn);
  const hear = () => Promise.resolve(err("no recordings here"));
  const { meal, serveAt } = found.value;
  const view = await rehearse({ meal, from: 16 * 60 + 30, serveAt, script: script.value, hear, tell });
  if (!view.ok) throw new Error(view.error);
  return { turns, view: view.value, summary: summaryOf(view.value, turns) };
}

describe("the welcome supper, from the first step to the table", async () => {
  const { turns, view, summary } = await supper();

  it("[N75] every step was called and finished, and the meal is over", () => {
    expect(summary.steps).toMatchObject({
      called: summary.steps.inAll,
      finished: summary.steps.inAll,
      skipped: 0,
      open: [],
    });
    expect(view.session.phase.state).toBe("ended");
  });

  it("[N75] all that the cook said was understood, and nothing that was promised was refused", () => {
    expect([summary.notUnderstood, summary.refused]).toEqual([[], []]);
  });

  it("[N75] every timer rang, or its step was finished before it had to", () => {
    const started = view.log.events.flatMap(({ happening }) =>
      happening.type === "TimerStarted" ? [happening] : [],
    );
    const rung = turns.flatMap((turn) => (turn.who === "caller" && turn.how === "ring" ? [turn.said] : []));
    expect(started.length).toBeGreaterThanOrEqual(7);
    for (const { name } of started) expect(rung.some((said) => said.includes(name))).toBe(true);
    expect(summary.timers.stillRinging).toBe(0);
    expect([...view.session.timers.values()].filter(({ run }) => run.state === "running")).toEqual([]);
  });

  it("[N75] dinner is in time: nobody at the table notices five minutes", () => {
    expect(summary.wanted).toBe("18:30");
    expect(summary.lateMinutes).toBeLessThanOrEqual(5);
  });

  it("[N75] no attention was missed: every call for a stir was answered within two minutes", () => {
    const calls = turns.filter(
      (turn) => turn.who === "caller" && turn.how === "unasked" && turn.said.includes("Stir the soup"),
    );
    expect(calls.length).toBeGreaterThanOrEqual(4);
    for (const { at } of calls) {
      expect(
        turns.some((turn) => turn.who === "cook" && turn.at > at && turn.at <= plus(at, minutes(2))),
      ).toBe(true);
    }
  });
});

describe("a rehearsal", () => {
  it("[N74] the first step is called unasked at the first second, an answer follows its question", async () => {
    const { turns } = await played("17:02 what now");
    expect(turns).toEqual([
      "17:00:00 unasked Soup: Chop the two leeks.",
      "17:02:00 cook what now",
      "17:02:00 caller Soup: Chop the two leeks.",
    ]);
  });

  it("[N74] what the clock brings about comes at its second: the next call, the look, the late end", async () => {
    const { turns } = await played("17:05 done\n+1 min it's on\n+30 min");
    const unasked = turns.filter((turn) => / (unasked|ring) /.test(turn));
    expect(unasked.slice(1)).toEqual([
      "17:26:00 ring Time for a look: simmer the soup.",
      "17:31:00 ring Time is up: simmer the soup.",
      "17:33:00 unasked Dinner slips six minutes to five thirty-five.",
    ]);
  });

  it("[N74] lines without a time come five seconds apart; clock times and pauses are kept", async () => {
    const { turns } = await played(
      "what now\nwhat next\n+3 min what now\nuntil 17:10\n17:12 what now\n+20 s what now",
    );
    const spoken = turns.filter((turn) => turn.includes(" cook ")).map((turn) => turn.slice(0, 8));
    expect(spoken).toEqual(["17:00:05", "17:00:10", "17:03:10", "17:12:00", "17:12:20"]);
  });

  it("[N74] the obliging cook brings a meal to the table in the recipe's time", async () => {
    const { turns, summary } = await played("cook to the table");
    // 5 min to chop, a minute to set going, a look after 20 min and 20 s to come, 2 min to season.
    expect(turns.at(-2)).toBe("17:28:20 cook done");
    expect(summary).toEqual({
      meal: "Small meal",
      onTheTable: "17:28",
      wanted: null,
      lateMinutes: null,
      steps: { inAll: 3, called: 3, finished: 3, skipped: 0, open: [] },
      timers: { started: 1, rings: 1, stillRinging: 0 },
      said: 4,
      notUnderstood: [],
      refused: [],
    });
  });

  it("[N74] a ring that the script waits for is left to the next line", async () => {
    const { turns } = await played("cook until ring soup\nthree more minutes\ncook to the table");
    const rings = turns.filter((turn) => turn.includes(" ring ")).map((turn) => turn.slice(0, 8));
    expect(rings).toEqual(["17:26:00", "17:29:05"]);
  });

  it("[N74] an unfinished evening is summed up as it is: late, open, not understood", async () => {
    const { summary } = await played("17:05 done\n17:06 sing me a song", 17 * 60 + 30);
    expect(summary).toMatchObject({
      onTheTable: null,
      wanted: "17:30",
      lateMinutes: null,
      steps: { finished: 1, open: ["simmer the soup", "season the soup"] },
      notUnderstood: ["sing me a song"],
    });
  });

  it("[N74] what was undone was not done", async () => {
    const { summary } = await played("17:05 done\nundo that");
    expect(summary.steps).toMatchObject({ finished: 0, called: 1 });
  });

  it("[N74] while the caller was asked to be quiet, calls are shown and rings are heard", async () => {
    const { turns } = await played(
      "set a timer for three minutes for the bread\nbe quiet for twenty minutes\n+8 min",
    );
    expect(turns.filter((turn) => turn.includes(" ring "))).toEqual(["17:03:05 ring Time is up: bread."]);
    expect(turns.some((turn) => turn.includes(" shown "))).toBe(true);
    expect(turns.slice(5).some((turn) => turn.includes(" unasked "))).toBe(false);
  });

  it("[N77] a recording is heard as if spoken, one without a command leaves a mark", async () => {
    const { turns, summary } = await played("17:02 hear chatter.wav\n17:05 hear done.wav");
    expect(turns).toContain("17:02:00 cook (nothing understood in chatter.wav)");
    expect(turns).toContain("17:05:00 cook done");
    expect(summary.steps.finished).toBe(1);
  });

  it.each([
    ["hear other.wav", "Line 1 of the script: The file other.wav cannot be read."],
    ["what now\nwait for ring", "Line 2 of the script: nothing rang in four hours."],
    ["cook until ring pears", "Line 1 of the script: it did not ring before everything was ready."],
    [
      "17:10 what now\n17:05 what now",
      "Line 2 of the script: the clock shows 17:10 already; that time is past.",
    ],
  ])("[N72] %j cannot be played and is named by its line", async (text, sentence) => {
    expect(await play(text)).toBe(sentence);
  });
});
