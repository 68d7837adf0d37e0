import { describe, expect, it } from "vitest";
import { decide } from "../../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import { parseEvent, parseOrder } from "../../../core/cook/parse.ts";
import { sentence } from "../../../core/cook/refusal.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { taskId } from "../../../core/plan/model.ts";
import { dishId } from "../../../core/recipe/model.ts";
import { spokenAmount } from "../../../core/units/amount-words.ts";
import { evening, give, kitchenAt } from "../talk/supper.ts";
import { at } from "./supper.ts";

const forSix = { type: "ChangeServings", dish: dishId("griddle-breads"), servings: 6 } as const;
const sessionOf = ({ session }: MealLog) => {
  if (session === null) throw new Error("no meal");
  return session;
};
const breads = (log: MealLog) => sessionOf(log).meal.dishes.find(({ id }) => id === "griddle-breads");
const flour = (log: MealLog): string => {
  const amount = breads(log)?.ingredients.find(({ item }) => item === "flour")?.amount;
  return amount === undefined ? "" : spokenAmount(amount);
};
const refused = (log: MealLog, order: Parameters<typeof give>[2]): string => {
  const decision = decide({ id: "asked", at: at(5), order }, log);
  return decision.ok ? "carried out" : sentence(decision.error);
};

describe("another number of servings of a dish that is not begun", () => {
  it("[K50] its amounts and its batches follow, those of the other dishes stay", () => {
    const log = give(evening(), 1, forSix);
    expect(breads(log)?.yield.servings).toBe(6);
    expect([flour(evening()), flour(log)]).toEqual(["two and a half cups", "three and three quarters cups"]);
    const batches = (of: MealLog) => sessionOf(of).tasks.filter(({ step }) => step.id === "fry").length;
    expect([batches(evening()), batches(log)]).toEqual([2, 3]);
    expect(sessionOf(log).meal.dishes[0]).toEqual(sessionOf(evening()).meal.dishes[0]);
    expect(sessionOf(log).focus).toEqual(sessionOf(evening()).focus);
    expect(kitchenAt(log, 2).sheet?.entries.length).toBeGreaterThan(
      kitchenAt(evening(), 2).sheet?.entries.length ?? 0,
    );
  });

  it("[K50] a step in the cook's hands may still take more; what was prepared is another amount", () => {
    const stew = { ...forSix, dish: dishId("lantern-stew") };
    const log = give(evening(), 1, stew);
    expect(sessionOf(log).focus?.task).toBe("lantern-stew/halve");
    expect(sessionOf(log).meal.dishes[0]?.yield.servings).toBe(6);
  });

  it("[K51] is refused with a sentence once the dish is begun, where it is the plan already, and beyond what can be made", () => {
    const begun = give(evening(), 3, { type: "FinishTask", task: taskId("lantern-stew/halve") });
    expect(refused(begun, { ...forSix, dish: dishId("lantern-stew") })).toBe(
      "Too late for another number of servings; this dish is begun: Lantern squash stew.",
    );
    expect(refused(evening(), { ...forSix, servings: 4 })).toBe(
      "That is the plan already: Griddle flatbreads for 4.",
    );
    expect(refused(evening(), { ...forSix, servings: 101 })).toMatch(/^From one to 100 servings/);
    expect(refused(evening(), { ...forSix, servings: 0 })).toMatch(/^From one to 100 servings/);
    expect(refused(evening(), { ...forSix, dish: dishId("gone") })).toMatch(/^There is no dish/);
  });

  it("[K52] undo brings the servings back, and order and event are read back as they were written", () => {
    const log = give(evening(), 1, forSix);
    const undone = give(log, 2, { type: "UndoLast" });
    expect([flour(undone), breads(undone)?.yield.servings]).toEqual(["two and a half cups", 4]);
    expect(parseOrder(JSON.parse(JSON.stringify(forSix)))).toEqual({ ok: true, value: forSix });
    expect(parseOrder({ ...forSix, servings: 2.5 }).ok).toBe(false);
    const event = log.events.at(-1);
    const read = parseEvent(JSON.parse(JSON.stringify(event)));
    expect(read.ok && read.value).toEqual(event);
    expect(appendEvents(emptyLog, log.events).session).toEqual(log.session);
  });
});
