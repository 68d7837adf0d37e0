import { describe, expect, it } from "vitest";
import type { Order } from "../../../core/cook/orders.ts";
import { madeMeal } from "../../../core/house/made-meal.ts";
import { taskId } from "../../../core/plan/model.ts";
import { dishId, ingredientId } from "../../../core/recipe/model.ts";
import { shippedFoods } from "../food/shipped-foods.ts";
import { evening } from "../talk/supper.ts";
import { at } from "../cook/supper.ts";

const { table } = await shippedFoods();
const stew = dishId("lantern-stew");
const doTask = (type: "StartTask" | "FinishTask", task: string): Order => ({
  type,
  task: taskId(`lantern-stew/${task}`),
});

function made(endedAt: number | null, orders: readonly (readonly [number, Order])[] = [], foods = table) {
  const { session } = evening(...orders);
  if (session === null) throw new Error("no evening");
  return madeMeal("evening-1", session, endedAt === null ? null : at(endedAt), foods);
}

describe("what a meal makes", () => {
  it("[G15] each dish has its names, its yield, and how it keeps", () => {
    const { dishes, ...rest } = made(null);
    expect(rest).toEqual({ session: "evening-1", name: "Lantern supper", begunAt: at(0), endedAt: null });
    expect(dishes[0]).toEqual({
      dish: stew,
      name: "Lantern squash stew",
      says: ["stew", "squash stew"],
      yield: { servings: 4, of: "bowls" },
      isHot: true,
      keeping: { fridgeDays: 3, freezerDays: 90, source: "leftovers", hazards: [], known: "all" },
      offHeatAt: null,
      readyAt: null,
    });
  });

  it("[G15] when the meal is over it is known when a dish left the heat and when it was ready", () => {
    const [soup] = made(120, [
      [5, doTask("FinishTask", "halve")],
      [6, doTask("StartTask", "roast")],
      [7, doTask("FinishTask", "chop")],
      [8, doTask("StartTask", "simmer")],
      [30, doTask("FinishTask", "simmer")],
      [62, doTask("FinishTask", "roast")],
      [66, doTask("FinishTask", "season")],
    ]).dishes;
    expect(soup).toMatchObject({ offHeatAt: at(62), readyAt: at(66) });
  });

  it("[G15] what is open is not known to be ready; what was left out is not on the table", () => {
    const leaveOut = { type: "LeaveOutDish", dish: dishId("griddle-breads") } as const;
    const [first, ...others] = made(120, [[5, leaveOut]]).dishes;
    expect(first).toMatchObject({ dish: stew, offHeatAt: null, readyAt: null });
    expect(others).toEqual([]);
  });

  it("[G15] a swap counts: the dish keeps by what is really in it", () => {
    const swap = { type: "UseSwap", dish: stew, ingredient: ingredientId("lemon"), swap: 0 } as const;
    const noLimes = new Map([...table].filter(([name]) => !name.includes("lime")));
    expect(made(null, [], noLimes).dishes[0]?.keeping.known).toBe("all");
    expect(made(null, [[1, swap]], noLimes).dishes[0]?.keeping).toMatchObject({
      fridgeDays: 1,
      known: { but: ["lime juice"] },
    });
  });
});
