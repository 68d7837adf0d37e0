import { emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { inBestWays } from "../../../core/plan/ways.ts";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import { dishId, stepId } from "../../../core/recipe/model.ts";
import { kitchenWith, pan, patties, tray, way } from "../plan/forked-meals.ts";
import { after, appliance, dish, handsOn, meal, mins } from "../plan/small-meals.ts";
import { five, give } from "./supper.ts";

/** Patties in a pan, in the oven, or on a grill that this kitchen has not got; and a salad. */
export const pattiesMeal: CookingMeal = meal(
  [
    patties([pan, tray(), way("on the grill", { time: mins(5), needs: [appliance("grill")] })]),
    dish("salad", [handsOn("wash", mins(4)), handsOn("dress", mins(2), { after: [after("wash")] })]),
  ],
  kitchenWith({ burners: 2 }),
);

export const cookThePatties = (name: string): Order => ({
  type: "TakeWay",
  dish: dishId("patties"),
  step: stepId("cook"),
  way: name,
});

/** The evening begun as the server begins it, then some orders, each at its minute after five. */
export function pattiesEvening(...orders: readonly (readonly [number, Order])[]): MealLog {
  const chosen = inBestWays(pattiesMeal, null, five);
  const begun = give(emptyLog, 0, { type: "BeginMeal", meal: chosen, serveAt: null });
  return orders.reduce((log, [minute, order]) => give(log, minute, order), begun);
}
