import { describe, expect, it } from "vitest";
import type { Binding } from "../../../core/plan/critical-chain.ts";
import { bindingsOf, criticalChain } from "../../../core/plan/critical-chain.ts";
import type { PlanInput, RunSheet } from "../../../core/plan/model.ts";
import { taskId } from "../../../core/plan/model.ts";
import { plan } from "../../../core/plan/plan.ts";
import type { Dish, Step } from "../../../core/recipe/model.ts";
import { minutes, plus, seconds } from "../../../core/units/quantity.ts";
import {
  after,
  appliance,
  at,
  burner,
  dish,
  evening,
  handsOff,
  handsOn,
  harvestSupper,
  heat,
  kitchen,
  mins,
  oven,
} from "./small-meals.ts";

const one = (id: string, ...steps: readonly Step[]): Dish => dish(id, steps);
const narrow = { ...kitchen, burners: 1, ovens: kitchen.ovens.map((each) => ({ ...each, racks: 1 })) };

/** A sheet written down by hand: when each task starts, and in which lanes. */
function sheetOf(
  input: PlanInput,
  starts: Readonly<Record<string, readonly [number, ...(readonly string[])]>>,
  ovenMoves: RunSheet["ovenMoves"] = [],
): RunSheet {
  const entries = input.tasks
    .map((task) => {
      const [start = 0, ...lanes] = starts[task.id] ?? [];
      const end = plus(at(start), seconds((task.step.time.low + task.step.time.high) / 2));
      return { task: task.id, start: at(start), look: end, end, lanes, moments: [], slack: minutes(0) };
    })
    .sort((a, b) => a.start - b.start);
  const readyAt = entries.reduce((last, { end }) => (end > last ? end : last), input.now);
  return { entries, ovenMoves, readyAt, late: seconds(0), broken: [] };
}

const bindingOf = (input: PlanInput, sheet: RunSheet, id: string): Binding | undefined =>
  bindingsOf(input, sheet).get(taskId(id));

describe("what binds the start of a task", () => {
  it("[P80] what keeps only so long binds by the time that this cook takes", () => {
    const input = evening([dish("fritters", [handsOn("fry", mins(10), { hold: minutes(0) })])], {
      serveAt: at(60),
    });
    const slow = { ...input, tasks: input.tasks.map((task) => ({ ...task, pace: 2 })) };
    const [entry] = plan(slow).entries;
    expect(entry?.start).toBe(at(40));
    expect(bindingsOf(slow, plan(slow)).get(taskId("fritters/fry"))).toMatchObject({
      kind: "hot",
      from: at(40),
    });
  });

  it("[P80] the end of the task before, with its rest", () => {
    const input = evening([
      one("a", handsOn("mix", mins(10)), handsOn("roll", mins(5), { after: [after("mix", 20)] })),
    ]);
    const sheet = sheetOf(input, { "a/mix": [0, "cook"], "a/roll": [30, "cook"] });
    expect(bindingOf(input, sheet, "a/mix")).toEqual({ kind: "now", from: at(0) });
    expect(bindingOf(input, sheet, "a/roll")).toEqual({
      kind: "after",
      from: at(30),
      task: "a/mix",
      rest: minutes(20),
    });
  });

  it("[P80] the rest of a task that is over, and what is going already", () => {
    const input = evening(
      [one("a", handsOn("mix", mins(10)), handsOff("prove", mins(5), { after: [after("mix", 20)] }))],
      {
        now: at(15),
        progress: new Map([[taskId("a/mix"), { state: "done", startedAt: at(0), at: at(10) }]]),
      },
    );
    const rest: Binding = { kind: "after", from: at(30), task: taskId("a/mix"), rest: minutes(20) };
    expect(bindingOf(input, plan(input), "a/prove")).toEqual(rest);
    const going: PlanInput = {
      ...input,
      now: at(31),
      progress: new Map([
        ...input.progress,
        [taskId("a/prove"), { state: "running", startedAt: at(30), span: mins(5) }],
      ]),
    };
    expect(bindingOf(going, plan(going), "a/prove")).toEqual({ kind: "begun", from: at(30) });
  });

  it("[P80] the cook's hands: all of a hands-on task, the first minute of another", () => {
    const input = evening([
      one("a", handsOn("mix", mins(10))),
      one("b", handsOff("soak", mins(30))),
      one("c", handsOn("peel", mins(5))),
    ]);
    const sheet = sheetOf(input, { "a/mix": [0, "cook"], "b/soak": [10, "counter"], "c/peel": [11, "cook"] });
    expect(bindingOf(input, sheet, "b/soak")).toEqual({ kind: "hands", from: at(10), task: "a/mix" });
    expect(bindingOf(input, sheet, "c/peel")).toEqual({ kind: "hands", from: at(11), task: "b/soak" });
  });

  it("[P80] a burner or an appliance that is taken, by who leaves it last", () => {
    const pot = (id: string, length: number) => one(id, handsOff("boil", mins(length), { needs: [burner] }));
    const input = evening(
      [
        pot("a", 20),
        pot("b", 30),
        one("c", handsOff("whirl", mins(4), { needs: [appliance("blender")] })),
        one("d", handsOff("whirl", mins(4), { needs: [appliance("blender")] })),
      ],
      {},
      narrow,
    );
    const sheet = sheetOf(input, {
      "a/boil": [0, "burner 1"],
      "b/boil": [20, "burner 1"],
      "c/whirl": [1, "blender"],
      "d/whirl": [5, "blender"],
    });
    expect(bindingOf(input, sheet, "b/boil")).toEqual({
      kind: "thing",
      from: at(20),
      task: "a/boil",
      thing: "burner",
    });
    expect(bindingOf(input, sheet, "d/whirl")).toEqual({
      kind: "thing",
      from: at(5),
      task: "c/whirl",
      thing: "blender",
    });
  });

  it("[P80] the oven: heating from cold, on its way to another heat, full", () => {
    const bake = (id: string, degrees: number) =>
      one(id, handsOff("bake", mins(20), { needs: [oven(degrees)] }));
    const input = evening([bake("a", 370), bake("b", 370), bake("c", 445)], {}, narrow);
    // The kitchen's oven heats 15 F a minute: 20 minutes from 70 F to 370 F, 5 more to 445 F.
    const turn = (degrees: number, from: number, to: number, ids: readonly string[]) => ({
      oven: "oven",
      heat: heat(degrees).low,
      at: at(from),
      readyAt: at(to),
      for: ids.map(taskId),
    });
    const sheet = sheetOf(input, { "a/bake": [20, "oven"], "b/bake": [40, "oven"], "c/bake": [65, "oven"] }, [
      turn(370, 0, 20, ["a/bake", "b/bake"]),
      turn(445, 60, 65, ["c/bake"]),
    ]);
    const heating = { kind: "heat", oven: "oven" } as const;
    expect(bindingOf(input, sheet, "a/bake")).toEqual({
      ...heating,
      from: at(20),
      task: null,
      heat: heat(370).low,
    });
    expect(bindingOf(input, sheet, "b/bake")).toEqual({
      kind: "rack",
      from: at(40),
      task: "a/bake",
      oven: "oven",
    });
    expect(bindingOf(input, sheet, "c/bake")).toEqual({
      ...heating,
      from: at(65),
      task: "b/bake",
      heat: heat(445).low,
    });
    expect(criticalChain(input, sheet)).toEqual(["a/bake", "b/bake", "c/bake"]);
  });

  it("[P80] an oven that is set and not hot yet", () => {
    const input = evening([one("a", handsOff("bake", mins(20), { needs: [oven(370)] }))], {
      now: at(5),
      ovens: [{ oven: "oven", heat: heat(370).low, setAt: at(0) }],
    });
    expect(bindingOf(input, plan(input), "a/bake")).toMatchObject({ kind: "heat", from: at(20), task: null });
  });

  it("[P80] a table for which it must be fresh, hot, or not made too long ahead", () => {
    const steps = [
      one("a", handsOn("dress", mins(5), { endsBeforeServing: minutes(10) })),
      one("b", handsOff("fry", mins(5), { hold: minutes(20) })),
      one("c", handsOn("stir", mins(5), { ahead: minutes(60) })),
    ];
    const input = evening(steps, { serveAt: at(120) });
    const sheet = sheetOf(input, { "a/dress": [105, "cook"], "b/fry": [95], "c/stir": [55, "cook"] });
    expect(bindingOf(input, sheet, "a/dress")).toEqual({ kind: "fresh", from: at(105), within: minutes(10) });
    expect(bindingOf(input, sheet, "b/fry")).toEqual({
      kind: "hot",
      from: at(95),
      task: null,
      keeps: minutes(20),
    });
    expect(bindingOf(input, sheet, "c/stir")).toEqual({ kind: "ahead", from: at(55), keeps: minutes(60) });
  });

  it("[P80] a follower that comes no sooner, and that one by what keeps it besides", () => {
    const input = evening(
      [
        one(
          "a",
          handsOn("whip", mins(5)),
          handsOff("cook", mins(5), { after: [after("whip", 0, 0)], needs: [burner] }),
        ),
        one("b", handsOff("boil", mins(20), { needs: [burner] })),
      ],
      {},
      narrow,
    );
    const sheet = sheetOf(input, {
      "b/boil": [0, "burner 1"],
      "a/whip": [15, "cook"],
      "a/cook": [20, "burner 1"],
    });
    expect(bindingOf(input, sheet, "a/whip")).toEqual({
      kind: "soon",
      from: at(15),
      task: "a/cook",
      within: minutes(0),
    });
    expect(bindingOf(input, sheet, "a/cook")).toEqual({
      kind: "thing",
      from: at(20),
      task: "b/boil",
      thing: "burner",
    });
    expect(criticalChain(input, sheet)).toEqual(["b/boil", "a/cook"]);
  });

  it("[P80] the cook's wish, or nothing: then how much sooner it could begin, and what would stop it there", () => {
    const input = evening([one("a", handsOn("mix", mins(10))), one("b", handsOn("peel", mins(5)))], {
      serveAt: at(60),
      first: [taskId("a/mix")],
    });
    const sheet = sheetOf(input, { "a/mix": [0, "cook"], "b/peel": [35, "cook"] });
    expect(bindingOf(input, sheet, "a/mix")).toEqual({ kind: "wish", from: at(0) });
    expect(bindingOf(input, sheet, "b/peel")).toEqual({
      kind: "free",
      from: at(10),
      room: minutes(25),
      slack: minutes(0),
      next: { kind: "hands", from: at(10), task: "a/mix" },
    });
  });
});

describe("the critical chain", () => {
  it("[P81] goes back to now where all is to be ready as soon as it can be", () => {
    const input = evening(harvestSupper);
    const sheet = plan(input);
    const [first] = criticalChain(input, sheet);
    const binding = first === undefined ? undefined : bindingsOf(input, sheet).get(first);
    expect(["now", "heat", "begun"]).toContain(binding?.kind);
  });

  it("[P82] a task of it that takes longer makes dinner later by as much; one off it does not", () => {
    const meal = (longer: number, other: number) =>
      evening(
        [
          one("a", handsOff("boil", mins(20 + longer), { needs: [burner] })),
          one("b", handsOff("fry", mins(15), { needs: [burner] })),
          one("c", handsOn("chop", mins(5 + other))),
        ],
        {},
        narrow,
      );
    const chain = criticalChain(meal(0, 0), plan(meal(0, 0)));
    expect([...chain].sort()).toEqual(["a/boil", "b/fry"]);
    expect(plan(meal(6, 0)).readyAt - plan(meal(0, 0)).readyAt).toBe(6 * 60_000);
    expect(plan(meal(0, 6)).readyAt).toBe(plan(meal(0, 0)).readyAt);
  });

  it("[P81] is empty where nothing is left", () => {
    const input = evening([one("a", handsOn("mix", mins(10)))], {
      now: at(20),
      progress: new Map([[taskId("a/mix"), { state: "done", startedAt: at(0), at: at(10) }]]),
    });
    expect(criticalChain(input, plan(input))).toEqual([]);
  });
});
