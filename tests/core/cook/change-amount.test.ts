import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AmountWanted } from "../../../core/cook/amount-wanted.ts";
import { withAmount } from "../../../core/cook/change-amount.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import { parseEvent, parseOrder } from "../../../core/cook/parse.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { makesSense } from "../../../core/cook/unit-sense.ts";
import { taskId } from "../../../core/plan/model.ts";
import { dishId, ingredientId, stepId } from "../../../core/recipe/model.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import type { Measured } from "../../../core/units/amount.ts";
import { formatAmount, measured } from "../../../core/units/amount.ts";
import { convert } from "../../../core/units/measures.ts";
import type { Rational } from "../../../core/units/rational.ts";
import { add, rational, ratio, ZERO } from "../../../core/units/rational.ts";
import { evening, give, supper } from "../talk/supper.ts";
import { amount } from "./supper.ts";

const figure = (text: string): Measured => {
  const read = amount(text);
  if (read.kind !== "measured") throw new Error(`${text} has no figures`);
  return read;
};

const garlic = (text: string, step: string | null = null): AmountWanted => ({
  dish: dishId("lantern-stew"),
  ingredient: ingredientId("garlic"),
  step: step === null ? null : stepId(step),
  amount: figure(text),
});

/** What is listed, and what goes in at each step. */
function garlicIn(log: MealLog): readonly string[] {
  const dish = log.session?.meal.dishes.find(({ id }) => id === "lantern-stew");
  const listed = dish?.ingredients.find(({ id }) => id === "garlic");
  const uses = log.session?.tasks.flatMap((task) =>
    task.dish.id === "lantern-stew" ? task.step.uses.filter(({ ingredient }) => ingredient === "garlic") : [],
  );
  return [listed, ...(uses ?? [])].map((one) => (one === undefined ? "" : formatAmount(one.amount)));
}

describe("an amount that is changed while cooking", () => {
  it("[L70] changes the list, and is shared out to the steps as they shared it before", () => {
    expect(garlicIn(evening())).toEqual(["4 cloves", "2 cloves", "2 cloves"]);
    const changed = give(evening(), 1, { type: "ChangeAmount", ...garlic("3 cloves") });
    expect(garlicIn(changed)).toEqual(["3 cloves", "1 1/2 cloves", "1 1/2 cloves"]);
    expect(changed.events.at(-1)?.happening).toEqual({ type: "AmountChanged", ...garlic("3 cloves") });
  });

  it("[L70] what has gone in stands, and the steps to come share the rest", () => {
    const chopped = evening([4, { type: "FinishTask", task: taskId("lantern-stew/chop") }]);
    expect(garlicIn(give(chopped, 5, { type: "ChangeAmount", ...garlic("5 cloves") }))).toEqual([
      "5 cloves",
      "2 cloves",
      "3 cloves",
    ]);
    // Less than is in: the cook tells what was taken in truth.
    expect(garlicIn(give(chopped, 5, { type: "ChangeAmount", ...garlic("1 clove") }))).toEqual([
      "1 clove",
      "1/2 clove",
      "1/2 clove",
    ]);
  });

  it("[L71] what was used at one step changes that step, and the list with it", () => {
    const used = give(evening(), 1, { type: "ChangeAmount", ...garlic("3 cloves", "chop") });
    expect(garlicIn(used)).toEqual(["5 cloves", "3 cloves", "2 cloves"]);
  });

  it("[L70] undo brings the old amount back, and a replay gives the same evening", () => {
    const changed = give(evening(), 1, { type: "ChangeAmount", ...garlic("3 cloves") });
    expect(garlicIn(give(changed, 2, { type: "UndoLast" }))).toEqual(garlicIn(evening()));
    expect(appendEvents(emptyLog, changed.events).session).toEqual(changed.session);
  });

  it("[L72] what was ticked off as prepared of it is to be prepared anew", () => {
    const portions = ["lantern-stew/chop/garlic", "lantern-stew/simmer/lentils"] as never[];
    const ticked = give(evening(), 1, { type: "FinishPreparing", portions });
    const changed = give(ticked, 2, { type: "ChangeAmount", ...garlic("3 cloves") });
    expect([...(changed.session?.prepared ?? [])]).toEqual(["lantern-stew/simmer/lentils"]);
  });

  it.each([
    ["saffron", "1 tsp", "NoSuchFood"],
    ["garlic", "100 cloves", "OddAmount"],
    ["lemon", "3 cloves", "OddAmount"],
    ["lemon", "3", "OddAmount"],
    ["red-onion", "2 pinches", "OddAmount"],
    ["garlic", "4 cloves", "AmountAlready"],
  ])("[L73] %s, %s is refused and changes nothing", (id, much, code) => {
    const wanted = { ...garlic(much), ingredient: ingredientId(id) };
    expect(() => give(evening(), 1, { type: "ChangeAmount", ...wanted })).toThrow(code);
  });

  it("[L73] nought is refused, a negative amount does not even pass the edge", () => {
    const none = { ...garlic("1 clove"), amount: measured(ZERO, "clove") };
    expect(() => give(evening(), 1, { type: "ChangeAmount", ...none })).toThrow("NoAmount");
    const order = (low: string) => ({
      type: "ChangeAmount",
      ...none,
      amount: { ...none.amount, low, high: low },
    });
    expect(parseOrder(order("3/1")).ok).toBe(true);
    for (const bad of ["-3/1", "3/0", "a few"]) expect(parseOrder(order(bad)).ok).toBe(false);
    const event = {
      seq: 1,
      at: 0,
      command: "c",
      happening: { type: "AmountChanged", ...garlic("3 cloves") },
    };
    expect(parseEvent(event)).toEqual({ ok: true, value: event });
  });

  it.each([
    ["200 g", "2", true],
    ["1 cup", "2", true],
    ["1 head", "4 cloves", true],
    ["1 can", "1 cup", true],
    ["2 tbsp", "1 lb", true],
    ["2 tsp", "to taste", true],
    ["3 cloves", "to taste", false],
    ["2 bunches", "3 cloves", false],
    ["9 cups", "3/4 cup", true],
    ["9 1/4 cups", "3/4 cup", false],
    ["30 kg", "2", false],
    ["1 drop", "2", false],
  ])("[L73] whether %s can be meant where the recipe has %s", (told, listed, isSense) => {
    expect(makesSense(figure(told), amount(listed))).toBe(isSense);
  });

  it("[L74] the steps add up to the list exactly, whatever the amounts, units and steps that are over", () => {
    const [stew] = supper.dishes;
    if (stew === undefined) throw new Error("no stew");
    const parts = fc.array(
      fc.record({
        low: fc.integer({ min: 1, max: 30 }),
        more: fc.integer({ min: 0, max: 9 }),
        unit: fc.constantFrom("tsp", "tbsp", "cup"),
      }),
      { minLength: 1, maxLength: 4 },
    );
    const sumOf = (dish: Dish, unit: Measured["unit"]) =>
      dish.steps
        .flatMap(({ uses }) => uses)
        .reduce<readonly [Rational, Rational]>(
          ([low, high], { amount: one }) => {
            const like = convert(one, unit);
            if (!like.ok) throw new Error(like.error);
            return [add(low, rational(like.value.low)), add(high, rational(like.value.high))];
          },
          [ZERO, ZERO],
        );
    fc.assert(
      fc.property(
        parts,
        fc.integer({ min: 1, max: 200 }),
        fc.integer({ min: 0, max: 50 }),
        fc.constantFrom("tsp", "cup", "ml"),
        fc.nat(15),
        (uses, low, more, unit, over) => {
          const id = ingredientId("lemon");
          const steps = stew.steps.slice(0, uses.length).map((step, at) => {
            const { low: least = 1, more: plus = 0, unit: own = "tsp" } = uses[at] ?? {};
            return {
              ...step,
              uses: [{ ingredient: id, amount: measured(ratio(least, 7), own, ratio(least + plus, 7)) }],
            };
          });
          const [least, most] = sumOf({ ...stew, steps }, "tsp");
          const dish: Dish = {
            ...stew,
            steps,
            ingredients: stew.ingredients.map((one) =>
              one.id === id ? { ...one, amount: measured(least, "tsp", most) } : one,
            ),
          };
          const wanted = {
            dish: dish.id,
            ingredient: id,
            step: null,
            amount: measured(ratio(low, 9), unit, ratio(low + more, 9)),
          };
          const isOver = (step: string): boolean =>
            ((over >> steps.findIndex((one) => one.id === step)) & 1) === 1;
          const then = withAmount(dish, wanted, isOver);
          if (then === null) throw new Error("refused");
          expect(then.ingredients.find((one) => one.id === id)?.amount).toEqual(wanted.amount);
          expect(sumOf(then, unit)).toEqual([wanted.amount.low, wanted.amount.high]);
        },
      ),
      { numRuns: 300, seed: 9 },
    );
  });
});
