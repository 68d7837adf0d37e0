import { readFile } from "node:fs/promises";
import { expect, it } from "vitest";
import type { Happening } from "../../../core/cook/events.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import { parseEvent } from "../../../core/cook/parse.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import type { Session } from "../../../core/cook/session.ts";
import { withCommonSwaps } from "../../../core/diet/common-swaps.ts";
import { mealValues } from "../../../core/food/values.ts";
import { readSwaps } from "../../../core/food/read-swaps.ts";
import { dishId, ingredientId } from "../../../core/recipe/model.ts";
import { cookingMeal } from "../../../core/recipe/scale.ts";
import { instant, minutes } from "../../../core/units/quantity.ts";
import { shippedPantry } from "../recipe/shelf.ts";
import { larder } from "./diet-kit.ts";

const file = new URL("../../../recipes/foods/swaps.txt", import.meta.url);
const { swaps: rules } = readSwaps("swaps.txt", await readFile(file, "utf8"), larder.foods);
const pantry = await shippedPantry();
const supper = pantry.meals.find(({ id }) => id === "welcome-supper");
const cooking = supper === undefined ? null : cookingMeal(supper, pantry.dishes);
if (cooking?.ok !== true) throw new Error("no supper");
const meal = withCommonSwaps(cooking.value, { rules, larder, diets: [] });

const at = instant(Date.UTC(2031, 4, 4, 16, 0));
const soup = dishId("lentil-soup");
const lentils = ingredientId("lentils");

function sessionAfter(...happenings: readonly Happening[]): Session {
  const events = happenings.map((happening, index) => ({ seq: index + 1, at, command: "c", happening }));
  // What is stored must come back from the disk as it was.
  const stored = events.map((event) => parseEvent(JSON.parse(JSON.stringify(event))));
  const read = stored.flatMap((event) => (event.ok ? [event.value] : []));
  const { session } = appendEvents(emptyLog, read);
  if (session === null) throw new Error("no session");
  return session;
}

const dishIn = ({ meal: { dishes } }: Session) => dishes.find(({ id }) => id === soup);

it("[D27] what cooks longer has its steps and dinner later, and the values follow", () => {
  const begun: Happening = { type: "MealBegun", meal, serveAt: null };
  const offers =
    meal.dishes.find(({ id }) => id === soup)?.ingredients.find(({ id }) => id === lentils)?.swaps ?? [];
  const swap = offers.findIndex(({ longer }) => longer === minutes(15));
  expect(offers[swap]).toMatchObject({ use: "brown lentils", isCommon: true });
  const [before, after] = [
    sessionAfter(begun),
    sessionAfter(begun, { type: "SwapUsed", dish: soup, ingredient: lentils, swap }),
  ];
  const simmer = (session: Session) =>
    dishIn(session)?.steps.find(
      ({ uses, hands }) => hands === "off" && uses.some(({ ingredient }) => ingredient === lentils),
    );
  expect((simmer(after)?.time.low ?? 0) - (simmer(before)?.time.low ?? 0)).toBe(minutes(15));
  expect(runSheetOf(after, at).readyAt).toBeGreaterThan(runSheetOf(before, at).readyAt);
  expect(dishIn(after)?.ingredients.find(({ id }) => id === lentils)).toMatchObject({
    item: "brown lentils",
    preparation: null,
  });
  const iron = (session: Session) => mealValues(session.meal, larder.foods).inAll.iron.low;
  expect(iron(after)).not.toBe(iron(before));
});
