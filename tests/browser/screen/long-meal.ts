import type { CookingMeal, Dish, Need } from "../../../core/recipe/model.ts";
import { mealId } from "../../../core/recipe/model.ts";
import {
  after,
  burner,
  dish,
  handsOff,
  handsOn,
  kitchen,
  mins,
  oven,
  stirEvery,
} from "../../core/plan/small-meals.ts";

/** Eight steps, the dish's own words in each; times are common practice, no source. */
function eightSteps(name: string, food: string, other: string, place: Need): Dish {
  const plain = dish(name, [
    handsOn(`wash-and-trim-the-${food}`, mins(3, 5)),
    handsOn(`cut-the-${food}-into-wedges`, mins(6, 9), { after: [after(`wash-and-trim-the-${food}`)] }),
    handsOff(`cook-the-${food}-until-tender`, mins(25, 35), {
      after: [after(`cut-the-${food}-into-wedges`)],
      needs: [place],
      attend: [stirEvery(9, 3)],
    }),
    handsOn(`measure-the-${other}`, mins(2, 3)),
    handsOn(`whisk-the-${other}-with-lemon`, mins(3, 4), { after: [after(`measure-the-${other}`)] }),
    handsOff(`let-the-${other}-stand`, mins(10, 15), { after: [after(`whisk-the-${other}-with-lemon`)] }),
    handsOn(`turn-the-${food}-in-the-${other}`, mins(2, 3), {
      after: [after(`cook-the-${food}-until-tender`, 0, 25), after(`let-the-${other}-stand`)],
    }),
    handsOn(`taste-and-serve-the-${food}`, mins(1, 2), {
      after: [after(`turn-the-${food}-in-the-${other}`)],
    }),
  ]);
  return {
    ...plain,
    cautions: [
      `Hot steam rises from the ${food}; lift the lid away from you.`,
      `The ${other} may hold mustard.`,
    ],
  };
}

/** A made-up supper of five dishes and forty steps: as much as one page of paper has to hold. */
export const longMeal: CookingMeal = {
  id: mealId("long-supper"),
  name: "The Long Supper of the Lamp Room",
  dishes: [
    eightSteps("rutabaga-tray", "rutabaga", "parsley sauce", oven(400)),
    eightSteps("kohlrabi-braise", "kohlrabi", "dill dressing", burner),
    eightSteps("celeriac-bake", "celeriac", "onion crust", oven(350)),
    eightSteps("runner-beans", "runner beans", "garlic crumbs", burner),
    eightSteps("quince-compote", "quinces", "ginger syrup", burner),
  ],
  kitchen,
};
