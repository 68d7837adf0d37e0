import { describe, expect, it } from "vitest";
import type { Order } from "../../../core/cook/orders.ts";
import { emptyLog } from "../../../core/cook/fold.ts";
import { timerId } from "../../../core/cook/orders.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { spellsOf } from "../../../core/pace/spells.ts";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { at, evening, give, sessionOf, step, supper, task } from "../cook/supper.ts";

/** The supper calls "halve the squash" at once: planned for five minutes. */
const first = task.halve;
const finish = (of = first): Order => ({ type: "FinishTask", task: of });
const spells = (...orders: readonly (readonly [number, Order])[]) => spellsOf(evening(...orders).events);
const cutting = (minute: number, ratio: number) => [{ kind: "cutting", ratio, at: at(minute) }];

describe("what an evening's log tells of the cook's pace", () => {
  it("[P90] a step takes from its call to its end, against the middle of its range", () => {
    expect(spells([6, finish()])).toEqual(cutting(6, 1.2));
    // "Wash the greens" is called next: four to six minutes.
    expect(spells([6, finish()], [16, finish(task.wash)])).toEqual([
      ...cutting(6, 1.2),
      { kind: "washing", ratio: 2, at: at(16) },
    ]);
  });

  it("[P90] pauses are not counted, nor what was ended in one", () => {
    const held: readonly (readonly [number, Order])[] = [
      [2, { type: "HoldEverything" }],
      [42, { type: "GoOn" }],
    ];
    expect(spells(...held, [45, finish()])).toEqual(cutting(45, 1));
    expect(spells([2, { type: "HoldEverything" }], [8, finish()])).toEqual([]);
  });

  it("[P90] an end that was taken back is none, and the step goes on", () => {
    expect(spells([3, finish()], [4, { type: "UndoLast" }])).toEqual([]);
    expect(spells([3, finish()], [4, { type: "UndoLast" }], [10, finish()])).toEqual(cutting(10, 2));
  });

  it("[P90] what is ticked off within seconds, or left open for hours, is left out", () => {
    expect(spells([0.1, finish()])).toEqual([]);
    expect(spells([0.9, finish()])).toEqual([]);
    expect(spells([26, finish()])).toEqual([]);
    expect(spells([240, finish()])).toEqual([]);
  });

  it("[P90] of several that are ticked off one after the other none counts, as the first has the time of all", () => {
    expect(spells([12, finish()], [12.1, finish(task.wash)])).toEqual([]);
  });

  it("[P90] a step that was put aside, taken up again or left out is left out", () => {
    const choose: Order = { type: "ChooseTask", task: task.wash };
    expect(spells([2, choose], [7, finish(task.wash)], [9, finish()])).toEqual([
      { kind: "washing", ratio: 1, at: at(7) },
    ]);
    expect(spells([2, { type: "SkipTask", task: first }])).toEqual([]);
    expect(spells([5, finish()], [6, { type: "ReopenTask", task: first }], [11, finish()])).toEqual(
      cutting(5, 1),
    );
  });

  it("[P90] a step during which something else was seen to is left out", () => {
    const simmering = [
      [5, finish()],
      [10, finish(task.wash)],
      [10.5, { type: "StartTask", task: task.simmer }],
    ] as const;
    const timer: Order = {
      type: "StartTimer",
      timer: timerId("eggs"),
      name: null,
      span: { low: minutes(1), high: minutes(1) },
      dish: null,
    };
    expect(
      spells(
        ...simmering.slice(0, 1),
        [6, timer],
        [8, { type: "AnswerRing", timer: timerId("eggs") }],
        [10, finish(task.wash)],
      ),
    ).toEqual(cutting(5, 1));
    expect(spells(...simmering)).toHaveLength(2);
  });

  it("[P90] a step that was never called has no beginning, so it has no length", () => {
    expect(spells([5, { type: "FinishTask", task: task.mash }])).toEqual([]);
  });

  it("[P91] nothing is read off what goes by itself, stands in the cold, or must not go on", () => {
    const dishes = supper.dishes.map((dish) => ({
      ...dish,
      steps: [
        step("sear", "sear the squash", { latest: "hard", needs: [{ kind: "burner", count: 1 }] }),
        step("chill", "stir the jelly", { needs: [{ kind: "fridge" }] }),
      ],
    }));
    const meal: CookingMeal = { ...supper, dishes };
    let log: MealLog = give(emptyLog, 0, { type: "BeginMeal", meal, serveAt: null });
    for (const minute of [5, 10, 15, 20]) {
      const called = sessionOf(log).focus?.task ?? first;
      log = give(log, minute, finish(called));
    }
    expect([...sessionOf(log).progress.values()].map(({ state }) => state)).toEqual(Array(4).fill("done"));
    expect(spellsOf(log.events)).toEqual([]);
  });

  it("[P90] a log without a meal tells nothing", () => {
    expect(spellsOf([])).toEqual([]);
  });
});
