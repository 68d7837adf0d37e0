import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { cookedDishes, type EatenMeal } from "../../core/diet/eaten.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { ok, type Result } from "../../core/units/result.ts";
import type { MealStore, StoreFailure } from "../store/meal-store.ts";

/** The meals of the last days, or one sentence that says why nobody can tell. */
export type Eaten = Result<readonly EatenMeal[], string>;

/** So many evenings are looked at: more than anyone cooks in a week. */
const MOST_EVENINGS = 60;
const DAY_MS = 86_400_000;

/** The day of a moment by this machine's calendar, counted on from any day. */
const dayOf = (at: number): number => {
  const date = new Date(at);
  return Math.round(Date.UTC(date.getFullYear(), date.getMonth(), date.getDate()) / DAY_MS);
};

/** What the log says was eaten in the week up to a moment, the meals that are over only. */
export function eatenBefore(store: MealStore, at: Instant): Result<readonly EatenMeal[], StoreFailure> {
  const past = store.past(MOST_EVENINGS);
  if (!past.ok) return past;
  const meals: EatenMeal[] = [];
  for (const { session, begunAt } of past.value) {
    const daysAgo = dayOf(at) - dayOf(begunAt);
    if (daysAgo < 0 || daysAgo > 6) continue;
    const events = store.load(session);
    if (!events.ok) return events;
    const folded = appendEvents(emptyLog, events.value).session;
    const dishes = folded === null ? [] : cookedDishes(folded);
    if (dishes.length > 0) meals.push({ daysAgo, dishes });
  }
  return ok(meals);
}
