import { describe, expect, it } from "vitest";
import { plan } from "../../../core/plan/plan.ts";
import type { Entry, PlanInput, Progress, RunSheet, TaskId } from "../../../core/plan/model.ts";
import { taskId } from "../../../core/plan/model.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { faultsOf } from "./check-sheet.ts";
import {
  after,
  appliance,
  at,
  burner,
  dish,
  evening,
  fridge,
  handsOff,
  handsOn,
  harvestSupper,
  heat,
  mins,
  oven,
  stirEvery,
} from "./small-meals.ts";

/** Plans, and lets the independent check look at it first. */
function planned(input: PlanInput): RunSheet {
  const sheet = plan(input);
  expect(faultsOf(input, sheet)).toEqual([]);
  return sheet;
}

function entry(sheet: RunSheet, id: string): Entry {
  const found = sheet.entries.find((one) => one.task === id);
  if (found === undefined) throw new Error(`${id} is not on the sheet`);
  return found;
}

const progress = (states: Readonly<Record<string, Progress>>): ReadonlyMap<TaskId, Progress> =>
  new Map(Object.entries(states).map(([id, state]) => [taskId(id), state]));

const squash = dish("squash", [handsOff("roast", mins(60), { needs: [oven(365)] })]);
const patties = dish("patties", [handsOff("bake", mins(20, 30), { needs: [oven(350, 385)] })]);

describe("one oven", () => {
  it("[P8] a squash at 365 F for an hour and patties that stand 350 to 385 F bake together at 365 F", () => {
    // The two heats and times: common practice, no source.
    const sheet = planned(evening([squash, patties]));
    expect(sheet.ovenMoves.map((move) => [move.heat, move.for.length])).toEqual([[heat(365).low, 2]]);
    expect(entry(sheet, "patties/bake").start).toBeLessThan(entry(sheet, "squash/roast").end);
  });

  it("[P9] heats without a common degree take turns, with the time to change over between", () => {
    const bread = dish("bread", [handsOff("bake", mins(20), { needs: [oven(450)] })]);
    const sheet = planned(evening([squash, bread]));
    const [first, second] = [entry(sheet, "squash/roast"), entry(sheet, "bread/bake")].sort(
      (a, b) => a.start - b.start,
    );
    const change = second?.task === "bread/bake" ? (450 - 365) / 15 : (450 - 365) / 5;
    expect(((second?.start ?? 0) - (first?.end ?? 0)) / 60_000).toBeGreaterThanOrEqual(change);
    expect(sheet.ovenMoves).toHaveLength(2);
  });

  it("[P10] a cold oven is turned on as long before as it takes to heat from 70 F", () => {
    const sheet = planned(evening([squash], { serveAt: at(180) }));
    const [move] = sheet.ovenMoves;
    expect(((move?.readyAt ?? 0) - (move?.at ?? 0)) / 60_000).toBeCloseTo((365 - 70) / 15, 3);
    expect(move?.readyAt).toBe(entry(sheet, "squash/roast").start);
  });

  it("[P10] an oven that is hot already needs no move and no waiting", () => {
    const ovens = [{ oven: "oven", heat: heat(365).low, setAt: at(-40) }];
    const sheet = planned(evening([squash], { ovens }));
    expect([sheet.ovenMoves, entry(sheet, "squash/roast").start]).toEqual([[], at(0)]);
  });

  it("[P11] three trays do not fit an oven of two racks at once", () => {
    const trays = ["one", "two", "three"].map((id) =>
      dish(id, [handsOff("bake", mins(20), { needs: [oven(400)] })]),
    );
    const starts = planned(evening(trays))
      .entries.map((one) => one.start)
      .sort((a, b) => a - b);
    expect(((starts[2] ?? 0) - (starts[0] ?? 0)) / 60_000).toBeGreaterThanOrEqual(20);
  });
});

describe("one cook", () => {
  it("[P12] an unattended step takes the cook's first minute and leaves the rest to other work", () => {
    const soup = dish("soup", [handsOff("simmer", mins(30), { needs: [burner] })]);
    const salad = dish("salad", [handsOn("chop", mins(20))]);
    const sheet = planned(evening([soup, salad]));
    expect([entry(sheet, "soup/simmer").start, entry(sheet, "salad/chop").start]).toEqual([at(0), at(1)]);
    expect(sheet.readyAt).toBe(at(30));
  });

  it("[P13] a flip that must come at once comes at once, whatever else there is to do", () => {
    const flat = dish("flat", [
      handsOff("first-side", mins(3), { needs: [burner] }),
      handsOn("flip", mins(1), { after: [after("first-side", 0, 0)], needs: [burner] }),
    ]);
    const salad = dish("salad", [
      handsOn("chop", mins(20)),
      handsOn("toss", mins(5), { after: [after("chop")] }),
    ]);
    const sheet = planned(evening([flat, salad]));
    expect(entry(sheet, "flat/flip").start).toBe(entry(sheet, "flat/first-side").end);
    expect(sheet.broken).toEqual([]);
  });

  it("[P14] a stir moves within its tolerance to a minute in which the cook is free", () => {
    const soup = dish("soup", [handsOff("simmer", mins(10), { needs: [burner], attend: [stirEvery(6, 3)] })]);
    const salad = dish("salad", [handsOn("chop", mins(7))]);
    const sheet = planned(evening([soup, salad]));
    expect(entry(sheet, "soup/simmer").moments.map((moment) => moment.at)).toEqual([at(8)]);
  });

  it("[P15] what the cook wants first comes first, and what is in hand stays in hand", () => {
    const dishes = [
      dish("soup", [handsOn("chop", mins(10)), handsOff("simmer", mins(60), { after: [after("chop")] })]),
      dish("carrots", [handsOn("peel", mins(5))]),
    ];
    const usual = planned(evening(dishes));
    const wished = planned(evening(dishes, { first: [taskId("carrots/peel")] }));
    const focused = planned(evening(dishes, { first: [taskId("soup/chop")], focus: taskId("carrots/peel") }));
    expect([usual, wished, focused].map((sheet) => sheet.entries[0]?.task)).toEqual([
      "soup/chop",
      "carrots/peel",
      "carrots/peel",
    ]);
  });
});

describe("the table", () => {
  it("[P16] with time to spare all is ready shortly before serving, hot things last, chilled things early", () => {
    const sheet = planned(evening(harvestSupper, { serveAt: at(150) }));
    expect([sheet.late, sheet.broken]).toEqual([0, []]);
    expect(sheet.readyAt).toBeGreaterThan(at(135));
    expect(sheet.readyAt).toBeLessThan(at(150));
    expect(entry(sheet, "slaw/chill").end).toBeLessThan(entry(sheet, "squash/roast").start);
    expect(entry(sheet, "slaw/dress").end).toBeGreaterThanOrEqual(at(140));
  });

  it("[P17] a serving time that cannot be kept, or is past, gives the soonest dinner and says how late", () => {
    const soon = planned(evening(harvestSupper));
    const past = planned(evening(harvestSupper, { serveAt: at(-60) }));
    expect(past.readyAt).toBe(soon.readyAt);
    expect(past.late).toBe((soon.readyAt - at(-60)) / 1000);
    expect(past.broken[0]).toMatch(/^Dinner will be .+ later than you asked for\.$/);
  });

  it("[P18] what may be made ahead begins no sooner than it keeps", () => {
    const jam = dish("jam", [handsOn("stir", mins(10), { ahead: minutes(90) })]);
    const sheet = planned(evening([jam], { serveAt: at(300) }));
    expect(entry(sheet, "jam/stir").end).toBeGreaterThanOrEqual(at(210));
  });
});

describe("an evening under way", () => {
  const sauce = dish("sauce", [
    handsOn("chop", mins(10)),
    handsOff("simmer", mins(10, 20), { after: [after("chop", 5)], needs: [burner] }),
    handsOn("blend", mins(2), { after: [after("simmer")], needs: [appliance("blender")] }),
  ]);

  it("[P19] done stays as history, running stays where it is, and what follows waits for its planned end", () => {
    const states = progress({
      "sauce/chop": { state: "done", startedAt: at(-30), at: at(-20) },
      "sauce/simmer": { state: "running", startedAt: at(-10), span: mins(10, 20) },
    });
    const sheet = planned(evening([sauce], { progress: states }));
    expect(sheet.entries.map((one) => [one.task, one.start, one.look, one.end])).toEqual([
      ["sauce/chop", at(-30), at(-20), at(-20)],
      ["sauce/simmer", at(-10), at(0), at(5)],
      ["sauce/blend", at(5), at(7), at(7)],
    ]);
  });

  it("[P19] what runs past its planned end is taken to end now", () => {
    const states = progress({
      "sauce/chop": { state: "done", startedAt: null, at: at(-60) },
      "sauce/simmer": { state: "running", startedAt: at(-40), span: mins(10, 20) },
    });
    expect(entry(planned(evening([sauce], { progress: states })), "sauce/blend").start).toBe(at(0));
  });

  it("[P20] what was skipped is off the sheet and keeps nothing waiting; a rest counts from what was done", () => {
    const skipped = planned(
      evening([sauce], { progress: progress({ "sauce/chop": { state: "skipped", at: at(0) } }) }),
    );
    expect(skipped.entries.map((one) => one.task)).toEqual(["sauce/simmer", "sauce/blend"]);
    expect(entry(skipped, "sauce/simmer").start).toBe(at(0));
    const done = planned(
      evening([sauce], {
        progress: progress({ "sauce/chop": { state: "done", startedAt: at(-9), at: at(-1) } }),
      }),
    );
    expect(entry(done, "sauce/simmer").start).toBe(at(4));
  });

  it("[P20] when all is done the sheet is history and dinner is ready", () => {
    const states = progress(
      Object.fromEntries(
        ["chop", "simmer", "blend"].map((id, index) => [
          `sauce/${id}`,
          { state: "done", startedAt: at(index), at: at(index + 1) },
        ]),
      ),
    );
    const sheet = planned(evening([sauce], { progress: states, now: at(10), serveAt: at(20) }));
    expect([sheet.readyAt, sheet.late, sheet.broken, sheet.ovenMoves]).toEqual([at(3), 0, [], []]);
  });
});

describe("lanes", () => {
  it("[P21] each entry names its burner, oven, appliance, shelf of the fridge, the cook, or the counter", () => {
    const all = dish("all", [
      handsOff("boil", mins(5), { needs: [burner] }),
      handsOff("fry", mins(5), { needs: [{ kind: "burner", count: 2 }] }),
      handsOff("bake", mins(5), { needs: [oven(400)] }),
      handsOn("blend", mins(5), { needs: [appliance("blender")] }),
      handsOff("chill", mins(5), { needs: [fridge] }),
      handsOff("rest", mins(5)),
    ]);
    const sheet = planned(evening([all]));
    const lanes = (id: string) => entry(sheet, `all/${id}`).lanes;
    expect([lanes("boil"), lanes("fry")].map((own) => own.length)).toEqual([1, 2]);
    for (const lane of [...lanes("boil"), ...lanes("fry")]) expect(lane).toMatch(/^burner [123]$/);
    expect(["bake", "blend", "chill", "rest"].map(lanes)).toEqual([
      ["oven"],
      ["cook", "blender"],
      ["fridge"],
      ["counter"],
    ]);
  });

  it("[P22] a pot keeps its burner while it runs", () => {
    const dishes = ["one", "two"].map((id) => dish(id, [handsOff("boil", mins(30), { needs: [burner] })]));
    const before = planned(evening(dishes));
    const states = progress(
      Object.fromEntries(
        before.entries.map((one) => [one.task, { state: "running", startedAt: one.start, span: mins(30) }]),
      ),
    );
    const later = planned(evening(dishes, { progress: states, now: at(12) }));
    expect(later.entries.map((one) => one.lanes)).toEqual(before.entries.map((one) => one.lanes));
  });

  it("[P23] slack says how much later a step may start without making dinner later", () => {
    const dishes = [
      dish("roast", [handsOff("roast", mins(60), { needs: [burner] })]),
      dish("salad", [handsOn("chop", mins(10))]),
    ];
    const sheet = planned(evening(dishes));
    expect([entry(sheet, "roast/roast").slack, entry(sheet, "salad/chop").slack]).toEqual([0, minutes(49)]);
  });
});
