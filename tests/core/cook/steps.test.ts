import { describe, expect, it } from "vitest";
import type { Call, Cue } from "../../../core/cook/calls.ts";
import { callsNow } from "../../../core/cook/calls-now.ts";
import { cuesAt } from "../../../core/cook/cues.ts";
import { afterSaying, nothingSaid, toSay } from "../../../core/cook/said-cues.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { emptyLog } from "../../../core/cook/fold.ts";
import { taskId } from "../../../core/plan/model.ts";
import type { Dish, Step } from "../../../core/recipe/model.ts";
import { after, at, evening, give, outcome, sessionOf, sheetAt, step, supper, task } from "./supper.ts";

const calls = (log: MealLog, minute: number): readonly Call[] =>
  callsNow(sessionOf(log), sheetAt(log, minute), at(minute));
const cues = (log: MealLog, minute: number): readonly Cue[] =>
  cuesAt(sessionOf(log), sheetAt(log, minute), at(minute));
const kinds = (log: MealLog, minute: number): readonly string[] =>
  calls(log, minute).map((call) => ("task" in call ? `${call.kind} ${call.task.id}` : call.kind));
const roasting = (): MealLog =>
  evening(
    [5, { type: "SetOven", oven: "oven", heat: { degrees: 365, scale: "F" } }],
    [5, { type: "FinishTask", task: task.halve }],
    [20, { type: "StartTask", task: task.roast }],
  );

function dishWith(...steps: readonly Step[]): Dish {
  const [, greens] = supper.dishes;
  if (greens === undefined) throw new Error("the supper has lost its greens");
  return { ...greens, steps };
}

describe("the step runner", () => {
  it("[K1] the slow dish comes first: the squash is halved before the greens are washed", () => {
    expect(sessionOf(evening()).focus?.task).toBe(task.halve);
  });

  it("[K2] the cold oven is called in time for the first dish that wants it", () => {
    expect(kinds(evening(), 0)).toContain("heat");
    const set = give(evening(), 0, { type: "SetOven", oven: "oven", heat: { degrees: 365, scale: "F" } });
    expect(kinds(set, 0)).not.toContain("heat");
  });

  it("[K3] finishing a step puts the next one before the cook at once", () => {
    const log = give(evening(), 5, { type: "FinishTask", task: task.halve });
    expect(sessionOf(log).focus).not.toBeNull();
    expect(sessionOf(log).focus?.task).not.toBe(task.halve);
  });

  it("[K4] while one dish runs unattended, the cook is given work on another", () => {
    expect(kinds(roasting(), 20)).toContain(`do ${task.wash}`);
  });

  it("[K5] the cook may do it differently: another step comes first, the one in hand is put aside", () => {
    const log = give(evening(), 1, { type: "ChooseTask", task: task.wash });
    expect(sessionOf(log).focus?.task).toBe(task.wash);
    expect(sessionOf(log).progress.get(task.halve)).toEqual({ state: "waiting" });
  });

  it("[K6] a step whose turn has not come is refused with what comes first, a rest that is not over with the time", () => {
    expect(outcome(evening(), 1, { type: "ChooseTask", task: task.mash })).toBe("FirstFinish");
    const rested = evening(
      [0, { type: "FinishTask", task: task.wash }],
      [0, { type: "StartTask", task: task.simmer }],
      [20, { type: "FinishTask", task: task.simmer }],
    );
    expect(outcome(rested, 22, { type: "ChooseTask", task: task.dress })).toBe("TooSoon");
    expect(outcome(rested, 25, { type: "ChooseTask", task: task.dress })).toContainEqual({
      type: "TaskCalled",
      task: task.dress,
    });
  });

  it("[K7] an attention moment is called at its minute and is gone once it was given", () => {
    const log = evening(
      [0, { type: "FinishTask", task: task.wash }],
      [0, { type: "StartTask", task: task.simmer }],
    );
    expect(kinds(log, 4)).not.toContain(`attend ${task.simmer}`);
    expect(kinds(log, 5)[0]).toBe(`attend ${task.simmer}`);
    const call = calls(log, 5)[0];
    if (call?.kind !== "attend") throw new Error("no attention was called");
    const given = give(log, 5, { type: "GiveAttention", task: task.simmer, moment: call.moment.key });
    expect(kinds(given, 6)).not.toContain(`attend ${task.simmer}`);
    expect(kinds(given, 10)[0]).toBe(`attend ${task.simmer}`);
  });

  it("[K8] of several stirs that were missed only the last is called, and seeing to it clears them all", () => {
    const log = evening(
      [0, { type: "FinishTask", task: task.wash }],
      [0, { type: "StartTask", task: task.simmer }],
    );
    const late = calls(log, 16).filter((call) => call.kind === "attend");
    expect(late).toHaveLength(1);
    const [call] = late;
    if (call?.kind !== "attend") throw new Error("no attention was called");
    expect(call.moment.at).toBe(at(15));
    const given = give(log, 16, { type: "GiveAttention", task: task.simmer, moment: call.moment.key });
    expect(kinds(given, 16)).not.toContain(`attend ${task.simmer}`);
  });

  it("[K9] a cue is said once, once more when nothing happens, and then left to the screen", () => {
    const log = evening(
      [0, { type: "FinishTask", task: task.wash }],
      [0, { type: "StartTask", task: task.simmer }],
    );
    let said = nothingSaid;
    const times: number[] = [];
    for (let minute = 5; minute < 9.9; minute += 0.25) {
      const say = toSay(cues(log, minute), said, at(minute)).filter((cue) => cue.call.kind === "attend");
      if (say.length > 0) times.push(minute);
      said = afterSaying(said, say, at(minute));
    }
    expect(times).toEqual([5, 6]);
  });

  it("[K10] a ring comes before all else, and what has to come off stays called after its ring was answered", () => {
    const log = roasting();
    const timer = [...sessionOf(log).timers.keys()][0];
    if (timer === undefined) throw new Error("the roast started no timer");
    expect(calls(log, 85)[0]).toMatchObject({ kind: "ring", ring: "end", since: at(85) });
    const answered = give(log, 85, { type: "AnswerRing", timer });
    expect(kinds(answered, 86)[0]).toBe(`take-off ${task.roast}`);
    expect(cues(answered, 87)[0]?.say).toBe(
      "It has had its time: roast the squash. Done when a knife slides in.",
    );
  });

  it("[K11] on hold nothing new is called, but heat does not wait: rings and attention go on", () => {
    const held = give(roasting(), 21, { type: "HoldEverything" });
    expect(kinds(held, 22)).toEqual(["held"]);
    expect(kinds(held, 76)).toEqual(["ring", "held"]);
    expect(kinds(give(held, 30, { type: "GoOn" }), 30)).toContain(`do ${task.wash}`);
    expect(outcome(held, 22, { type: "HoldEverything" })).toBe("AlreadyHeld");
    expect(outcome(roasting(), 22, { type: "GoOn" })).toBe("NotHeld");
  });

  it("[K12] before a rest or a hold gets too long, the step that has to follow is called", () => {
    const log = evening(
      [0, { type: "FinishTask", task: task.wash }],
      [0, { type: "StartTask", task: task.simmer }],
      [20, { type: "FinishTask", task: task.simmer }],
      [20, { type: "HoldEverything" }],
    );
    expect(cues(log, 32).map((cue) => cue.key)).not.toContain(`latest ${task.dress}`);
    const [cue] = cues(log, 33).filter((one) => one.key === `latest ${task.dress}`);
    expect(cue?.say).toBe("Dress the greens within two minutes: it cannot wait longer.");
  });

  it("[K13] a step in hand that takes too long is asked after, once and once more", () => {
    const log = evening();
    const stillAt = (minute: number): number =>
      cues(log, minute).filter((cue) => cue.key.startsWith("still")).length;
    expect(stillAt(6)).toBe(0);
    expect(stillAt(7)).toBe(1);
  });

  it("[K14] when every step is done the meal is served, and skipped ones hold nothing up", () => {
    const log = evening(
      [1, { type: "FinishTask", task: task.halve }],
      [2, { type: "SkipTask", task: task.roast }],
      [3, { type: "FinishTask", task: task.mash }],
      [4, { type: "FinishTask", task: task.wash }],
      [5, { type: "SkipTask", task: task.simmer }],
      [6, { type: "FinishTask", task: task.dress }],
    );
    expect(kinds(log, 7)).toEqual(["serve"]);
    expect(outcome(log, 7, { type: "FinishTask", task: task.dress })).toBe("AlreadyDone");
  });

  it("[K15] going back takes a finished step up again", () => {
    const log = give(evening([5, { type: "FinishTask", task: task.halve }]), 6, {
      type: "ReopenTask",
      task: task.halve,
    });
    expect(sessionOf(log).focus?.task).toBe(task.halve);
    expect(outcome(log, 6, { type: "ReopenTask", task: task.halve })).toBe("StillOpen");
  });

  it("[K16] a swap changes what goes in, and what it brings with it, in every step from then on", () => {
    const order = {
      type: "UseSwap",
      dish: sessionOf(evening()).meal.dishes[0]?.id,
      ingredient: "squash",
      swap: 0,
    };
    const log = give(evening(), 1, order as never);
    const [dish] = sessionOf(log).meal.dishes;
    expect(dish?.ingredients.map((one) => one.item)).toEqual(["sweet potato", "water"]);
    expect(dish?.steps.flatMap((one) => one.uses.map((use) => use.amount))).toEqual([
      { kind: "measured", low: "3/2", high: "3/2", unit: "lb" },
      { kind: "measured", low: "1/2", high: "1/2", unit: "cup" },
    ]);
    expect(outcome(log, 2, order as never)).toBe("SwapUsedBefore");
  });

  it("[F42] what the dish says of a food and its weight does not hold for what is used instead", () => {
    const [squash, water] = sessionOf(evening()).meal.dishes[0]?.ingredients ?? [];
    expect([squash?.food, water?.food]).toEqual(["winter squash", "water"]);
    const order = {
      type: "UseSwap",
      dish: sessionOf(evening()).meal.dishes[0]?.id,
      ingredient: "squash",
      swap: 0,
    };
    const [dish] = sessionOf(give(evening(), 1, order as never)).meal.dishes;
    // The water is still water, but half a cup of it weighs something else.
    expect(dish?.ingredients.map(({ food, weighs }) => [food, weighs])).toEqual([
      [null, null],
      ["water", null],
    ]);
  });

  it("[K17] dinner moves when a later time is asked for, and a time gone by is refused", () => {
    const log = give(evening(), 1, { type: "SetServing", serveAt: at(180) });
    expect(sessionOf(log).serveAt).toBe(at(180));
    expect(sheetAt(log, 1).readyAt).toBeLessThanOrEqual(at(180));
    expect(outcome(log, 2, { type: "SetServing", serveAt: at(1) })).toBe("ServingPast");
    expect(minutes(1)).toBe(60);
  });

  it("[K18] a step that has to follow at once takes the place of the one in hand", () => {
    const atOnce = dishWith(
      step("boil", "boil the greens", { hands: "off" }),
      step("drain", "drain the greens", { after: [after("boil", 0, 0)] }),
    );
    const meal = { ...supper, dishes: [...supper.dishes.slice(0, 1), atOnce] };
    const begun = give(emptyLog, 0, { type: "BeginMeal", meal, serveAt: null });
    const boiling = give(begun, 0, { type: "StartTask", task: taskId("greens/boil") });
    expect(sessionOf(boiling).focus?.task).toBe(task.halve);
    const drained = give(boiling, 3, { type: "FinishTask", task: taskId("greens/boil") });
    expect(sessionOf(drained).focus?.task).toBe(taskId("greens/drain"));
    expect(sessionOf(drained).progress.get(task.halve)).toEqual({ state: "waiting" });
    const after2 = give(drained, 5, { type: "FinishTask", task: taskId("greens/drain") });
    expect(sessionOf(after2).focus?.task).toBe(task.halve);
  });
});
