import { taskId } from "../../core/plan/model.ts";
import {
  dishId,
  ingredientId,
  mealId,
  stepId,
  type CookingMeal,
  type Step,
} from "../../core/recipe/model.ts";
import { ratio } from "../../core/units/rational.ts";
import { instant, minutes, seconds } from "../../core/units/quantity.ts";

/** Five in the afternoon of an invented day. */
export const five = instant(Date.UTC(2031, 4, 4, 17, 0));

const plain: Omit<Step, "id" | "title" | "do" | "time" | "hands"> = {
  uses: [],
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

/** One soup: chop, simmer unattended for 20 minutes, season. Small enough to cook in a test. */
export const smallMeal: CookingMeal = {
  id: mealId("small-meal"),
  name: "Small meal",
  dishes: [
    {
      id: dishId("leek-soup"),
      name: "Leek soup",
      says: ["soup", "leek soup"],
      about: "A soup for tests.",
      cautions: [],
      yield: { servings: 2, of: "bowls" },
      ingredients: [
        {
          id: ingredientId("leeks"),
          item: "leeks",
          amount: { kind: "measured", low: ratio(2), high: ratio(2), unit: "piece" },
          preparation: null,
          food: null,
          weighs: null,
          optional: false,
          swaps: [],
        },
      ],
      steps: [
        {
          ...plain,
          id: stepId("chop"),
          title: "chop the leeks",
          do: "Chop the two leeks.",
          hands: "on",
          time: { low: minutes(5), high: minutes(5) },
        },
        {
          ...plain,
          id: stepId("simmer"),
          title: "simmer the soup",
          do: "Simmer the leeks in water.",
          hands: "off",
          time: { low: minutes(20), high: minutes(25) },
          needs: [{ kind: "burner", count: 1 }],
          after: [{ step: stepId("chop"), atLeast: seconds(0), atMost: null }],
        },
        {
          ...plain,
          id: stepId("season"),
          title: "season the soup",
          do: "Season the soup with lemon.",
          hands: "on",
          time: { low: minutes(2), high: minutes(2) },
          after: [{ step: stepId("simmer"), atLeast: seconds(0), atMost: null }],
        },
      ],
    },
  ],
  kitchen: { burners: 2, ovens: [], appliances: [] },
};

export const chop = taskId("leek-soup/chop");
export const simmer = taskId("leek-soup/simmer");
