import { dish, handsOff, handsOn, mins, after, burner, oven, stirEvery } from "./small-meals.ts";
import type { Dish, Kitchen, Need, Step, Way } from "../../../core/recipe/model.ts";
import { kitchen } from "./small-meals.ts";

/** A way that runs by itself. */
export const way = (name: string, more: Partial<Way> = {}): Way => ({
  name,
  do: `Do it ${name}.`,
  hands: "off",
  time: mins(20, 30),
  extend: null,
  attend: [],
  needs: [],
  batch: null,
  ...more,
});

/** A step with several ways, done in the first. */
export function forked(id: string, all: readonly [Way, ...Way[]], more: Partial<Step> = {}): Step {
  const [{ name, ...own }] = all;
  const ways = { all, taken: name, chosen: { by: "recipe" } } as const;
  return { ...handsOff(id, own.time, more), ...own, ways };
}

const six = (holds: number) => ({ of: 6, holds, pieces: "patties" });
/** Two at a time, and turned once. */
export const pan = way("in a pan", { needs: [burner], batch: six(2), attend: [stirEvery(16, 2)] });
/** One tray takes all six. */
export const tray = (heat = 400): Way => way("in the oven", { needs: [oven(heat)], batch: six(6) });

/** Six patties that are shaped, fried or baked, and plated. */
export const patties = (all: readonly [Way, ...Way[]] = [pan, tray()]): Dish =>
  dish("patties", [
    handsOn("shape", mins(5)),
    forked("cook", all, { after: [after("shape")] }),
    handsOn("plate", mins(2), { after: [after("cook")] }),
  ]);

/** A kitchen with one oven, or with something else. */
export const kitchenWith = (more: Partial<Kitchen>): Kitchen => ({ ...kitchen, ...more });

/** A roast that has the oven at another heat, from the first minute to the table. */
export const roast = (minutes: number, needs: readonly Need[] = [oven(300)]): Dish =>
  dish("roast", [handsOff("roast", mins(minutes), { needs })]);
