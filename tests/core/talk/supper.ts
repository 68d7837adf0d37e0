import { decide, numbered } from "../../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import type { CookingMeal, Dish, Ingredient, Use, Way } from "../../../core/recipe/model.ts";
import { dishId, ingredientId, mealId } from "../../../core/recipe/model.ts";
import { appendHouse, emptyHouseLog } from "../../../core/house/house.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import { madeMeal } from "../../../core/house/made-meal.ts";
import { noDeviceList } from "../../../core/shop/at-hand.ts";
import { houseTalk } from "../../../core/talk/house-talk.ts";
import type { Dialogue, Kitchen } from "../../../core/talk/model.ts";
import { explainPlan } from "../../../core/talk/explain-plan.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { after, amount, at, step } from "../cook/supper.ts";

/** Two made-up dishes that share garlic, lemon juice and two kinds of onion. Times are common practice, no source. */
const f = (degrees: number) => ({ degrees, scale: "F" }) as const;
const span = (low: number, high = low) => ({ low: minutes(low), high: minutes(high) });

function food(id: string, item: string, how: string, more: Partial<Ingredient> = {}): Ingredient {
  return {
    id: ingredientId(id),
    item,
    amount: amount(how),
    preparation: null,
    food: null,
    weighs: null,
    optional: false,
    swaps: [],
    ...more,
  };
}

const use = (id: string, how: string): Use => ({ ingredient: ingredientId(id), amount: amount(how) });

const stew: Dish = {
  id: dishId("lantern-stew"),
  name: "Lantern squash stew",
  says: ["stew", "squash stew"],
  about: "Roast squash and lentils.",
  cautions: [],
  yield: { servings: 4, of: "bowls" },
  ingredients: [
    food("squash", "winter squash", "2 lb", { preparation: "halved" }),
    food("lentils", "red lentils", "1 cup", { preparation: "rinsed" }),
    food("red-onion", "red onion", "1"),
    food("garlic", "garlic", "4 cloves", { preparation: "minced" }),
    food("water", "water", "3 cups"),
    food("lemon", "lemon juice", "2 tbsp", {
      swaps: [
        { use: "lime juice", amount: amount("1 1/2 tbsp"), effect: null, changes: [] },
        {
          use: "cider vinegar",
          amount: amount("1 tbsp"),
          effect: "Use a quarter cup less water.",
          changes: [{ ingredient: ingredientId("water"), amount: amount("2 3/4 cups") }],
        },
      ],
    }),
    food("cumin", "ground cumin", "1 1/2 tsp"),
    food("pepper", "black pepper", "to taste"),
  ],
  steps: [
    step("halve", "halve the squash", { uses: [use("squash", "2 lb")], time: span(4, 6) }),
    step("roast", "roast the squash", {
      hands: "off",
      time: span(50, 60),
      until: "a knife slides in without pushing",
      needs: [{ kind: "oven", heat: { low: f(365), high: f(375) }, racks: 1 }],
      after: [after("halve")],
    }),
    step("chop", "chop the red onion", {
      uses: [use("red-onion", "1"), use("garlic", "2 cloves")],
      time: span(6),
    }),
    step("simmer", "simmer the lentils", {
      hands: "off",
      time: span(20, 25),
      latest: "hard",
      until: "they fall apart",
      extend: { by: span(2, 3), atMost: minutes(5) },
      uses: [
        use("lentils", "1 cup"),
        use("water", "3 cups"),
        use("cumin", "1 1/2 tsp"),
        use("garlic", "2 cloves"),
      ],
      attend: [{ kind: "every", every: minutes(5), within: minutes(1), do: "stir the lentils" }],
      needs: [{ kind: "burner", count: 1 }],
      after: [after("chop")],
    }),
    step("season", "season the stew", {
      uses: [use("lemon", "2 tbsp"), use("pepper", "to taste")],
      time: span(3),
      after: [after("roast"), after("simmer")],
    }),
  ],
};

const fried: Omit<Way, "name"> = {
  do: "Now fry the flatbreads.",
  hands: "on",
  time: span(10, 15),
  extend: null,
  attend: [],
  batch: { of: 8, holds: 4, pieces: "breads" },
  needs: [{ kind: "burner", count: 1 }],
};
const baked: Omit<Way, "name"> = {
  ...fried,
  do: "Bake the flatbreads on one tray.",
  hands: "off",
  batch: null,
  needs: [{ kind: "oven", heat: { low: f(350), high: f(425) }, racks: 1 }],
};

const breads: Dish = {
  id: dishId("griddle-breads"),
  name: "Griddle flatbreads",
  says: ["flatbreads", "breads"],
  about: "Eight thin breads.",
  cautions: [],
  yield: { servings: 4, of: "plates" },
  ingredients: [
    food("flour", "flour", "2 1/2 cups"),
    food("water", "water", "3/4 cup"),
    food("garlic", "garlic", "1 clove", { preparation: "minced" }),
    food("green-onion", "green onion", "2", { preparation: "sliced" }),
    food("lemon", "lemon juice", "1 tsp"),
  ],
  steps: [
    step("mix", "mix the dough", { uses: [use("flour", "2 cups"), use("water", "3/4 cup")], time: span(8) }),
    step("rest", "rest the dough", { hands: "off", time: span(30), after: [after("mix")] }),
    step("slice", "slice the green onion", {
      uses: [use("green-onion", "2"), use("garlic", "1 clove")],
      time: span(3),
    }),
    step("fry", "fry the flatbreads", {
      uses: [use("flour", "1/2 cup"), use("lemon", "1 tsp")],
      ...fried,
      ways: {
        all: [
          { name: "in a pan", ...fried },
          { name: "in the oven", ...baked },
        ],
        taken: "in a pan",
        chosen: { by: "recipe" },
      },
      until: "both sides are spotted brown",
      after: [after("rest"), after("slice")],
    }),
  ],
};

export const supper: CookingMeal = {
  id: mealId("lantern-supper"),
  name: "Lantern supper",
  dishes: [stew, breads],
  kitchen: {
    burners: 2,
    ovens: [{ name: "oven", racks: 2, heats: 20, cools: 8, hottest: f(500) }],
    appliances: [],
  },
};

let count = 0;

/** Carries out one order at a minute after five; throws where it is refused. */
export function give(log: MealLog, minute: number, order: Order, id = `g${(count += 1)}`): MealLog {
  const command = { id, at: at(minute), order };
  const decision = decide(command, log);
  if (!decision.ok) throw new Error(`refused: ${decision.error.code}`);
  return appendEvents(log, numbered(command, log, decision.value));
}

/** The supper begun at five o'clock, then some orders, each at its minute. */
export function evening(...orders: readonly (readonly [number, Order])[]): MealLog {
  const begun = give(emptyLog, 0, { type: "BeginMeal", meal: supper, serveAt: at(120) });
  return orders.reduce((log, [minute, order]) => give(log, minute, order), begun);
}

/** The house while the meal of a log is on: it has its note, and nothing is put away. */
export function houseOf({ session }: MealLog): HouseLog {
  if (session === null) return emptyHouseLog;
  const note = { type: "MealNoted", made: madeMeal("evening-1", session, null, null) } as const;
  return appendHouse(emptyHouseLog, [{ seq: 1, at: at(0), command: "note", happening: note }]);
}

/** The kitchen at a minute after five, clocks on UTC. */
export function kitchenAt(log: MealLog, minute: number, dialogue: Partial<Dialogue> = {}): Kitchen {
  const now = at(minute);
  return {
    log,
    sheet: log.session === null ? null : runSheetOf(log.session, now),
    now,
    utcOffsetMinutes: () => 0,
    dialogue: { ...silentDialogue, ...dialogue },
    utteranceId: `u${(count += 1)}`,
    explain: explainPlan,
    foods: null,
    household: { log: houseOf(log), talk: houseTalk, list: noDeviceList },
  };
}

export { at };
