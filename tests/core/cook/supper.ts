import { decide, numbered } from "../../../core/cook/decide.ts";
import type { Happening } from "../../../core/cook/events.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import type { Refusal } from "../../../core/cook/refusal.ts";
import type { MealLog, Session } from "../../../core/cook/session.ts";
import { taskId } from "../../../core/plan/model.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import type { CookingMeal, Dish, Step } from "../../../core/recipe/model.ts";
import { dishId, ingredientId, mealId, stepId } from "../../../core/recipe/model.ts";
import { parseAmount } from "../../../core/units/amount.ts";
import type { Amount } from "../../../core/units/amount.ts";
import { instant, minutes, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";

/** A made-up supper, small enough to follow by hand. Times are common practice, no source. */
export const five = instant(Date.UTC(2030, 0, 1, 17, 0));
export const at = (minute: number): Instant => plus(five, minutes(minute));

export const bare: Omit<Step, "id" | "title" | "do"> = {
  uses: [],
  hands: "on",
  time: { low: minutes(5), high: minutes(5) },
  until: null,
  latest: "soft",
  extend: null,
  attend: [],
  needs: [],
  after: [],
  batch: null,
  ahead: null,
  endsBeforeServing: null,
  hold: null,
  ways: null,
};

export function step(id: string, title: string, more: Partial<Step> = {}): Step {
  return { ...bare, id: stepId(id), title, do: `${title}.`, ...more };
}

export function after(id: string, atLeast = 0, atMost: number | null = null): Step["after"][number] {
  return { step: stepId(id), atLeast: minutes(atLeast), atMost: atMost === null ? null : minutes(atMost) };
}

export function amount(text: string): Amount {
  const parsed = parseAmount(text);
  if (!parsed.ok) throw new Error(parsed.error);
  return parsed.value;
}

const f = (degrees: number) => ({ degrees, scale: "F" }) as const;

const squash: Dish = {
  id: dishId("squash"),
  name: "Amber squash",
  says: ["squash"],
  about: "",
  cautions: [],
  yield: { servings: 4, of: "bowls" },
  ingredients: [
    {
      id: ingredientId("squash"),
      item: "winter squash",
      amount: amount("2 lb"),
      preparation: "halved",
      food: "winter squash",
      weighs: amount("900 g"),
      optional: false,
      swaps: [
        {
          use: "sweet potato",
          amount: amount("1 1/2 lb"),
          effect: "Use half a cup less water.",
          changes: [{ ingredient: ingredientId("water"), amount: amount("1/2 cup") }],
        },
      ],
    },
    {
      id: ingredientId("water"),
      item: "water",
      amount: amount("1 cup"),
      preparation: null,
      food: "water",
      weighs: amount("237 g"),
      optional: false,
      swaps: [],
    },
  ],
  steps: [
    step("halve", "halve the squash", {
      uses: [{ ingredient: ingredientId("squash"), amount: amount("2 lb") }],
    }),
    step("roast", "roast the squash", {
      hands: "off",
      time: { low: minutes(55), high: minutes(65) },
      latest: "hard",
      until: "a knife slides in",
      needs: [{ kind: "oven", heat: { low: f(365), high: f(365) }, racks: 1 }],
      after: [after("halve")],
    }),
    step("mash", "mash the squash", {
      uses: [{ ingredient: ingredientId("water"), amount: amount("1 cup") }],
      after: [after("roast")],
    }),
  ],
};

const greens: Dish = {
  id: dishId("greens"),
  name: "Slow greens",
  says: ["greens"],
  about: "",
  cautions: [],
  yield: { servings: 4, of: "plates" },
  ingredients: [],
  steps: [
    step("wash", "wash the greens", { time: { low: minutes(4), high: minutes(6) } }),
    step("simmer", "simmer the greens", {
      hands: "off",
      time: { low: minutes(20), high: minutes(20) },
      extend: { by: { low: minutes(2), high: minutes(3) }, atMost: minutes(5) },
      attend: [{ kind: "every", every: minutes(5), within: minutes(1), do: "stir the greens" }],
      needs: [{ kind: "burner", count: 1 }],
      after: [after("wash")],
    }),
    step("dress", "dress the greens", {
      time: { low: minutes(2), high: minutes(2) },
      after: [after("simmer", 5, 15)],
    }),
  ],
};

export const supper: CookingMeal = {
  id: mealId("supper"),
  name: "Small supper",
  dishes: [squash, greens],
  kitchen: {
    burners: 2,
    ovens: [{ name: "oven", racks: 2, heats: 20, cools: 8, hottest: f(500) }],
    appliances: [],
  },
};

export const task = {
  halve: taskId("squash/halve"),
  roast: taskId("squash/roast"),
  mash: taskId("squash/mash"),
  wash: taskId("greens/wash"),
  simmer: taskId("greens/simmer"),
  dress: taskId("greens/dress"),
};

let count = 0;

/** Carries out one order; throws when it is refused. */
export function give(log: MealLog, minute: number, order: Order, id = `c${(count += 1)}`): MealLog {
  const command = { id, at: at(minute), order };
  const decision = decide(command, log);
  if (!decision.ok) throw new Error(`refused: ${decision.error.code}`);
  return appendEvents(log, numbered(command, log, decision.value));
}

/** Several orders, each at its minute. */
export function evening(...orders: readonly (readonly [number, Order])[]): MealLog {
  const begun = give(emptyLog, 0, { type: "BeginMeal", meal: supper, serveAt: null });
  return orders.reduce((log, [minute, order]) => give(log, minute, order), begun);
}

/** What an order brings about, or the code it is refused with. */
export function outcome(log: MealLog, minute: number, order: Order): readonly Happening[] | Refusal["code"] {
  const decision = decide({ id: "asked", at: at(minute), order }, log);
  return decision.ok ? decision.value : decision.error.code;
}

export function sessionOf(log: MealLog): Session {
  if (log.session === null) throw new Error("no meal has begun");
  return log.session;
}

export const sheetAt = (log: MealLog, minute: number): RunSheet => runSheetOf(sessionOf(log), at(minute));
