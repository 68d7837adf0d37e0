import type { Session } from "../cook/session.ts";
import type { Dish } from "../recipe/model.ts";

/** A meal of the log, one serving of each dish of which was eaten as far as anybody knows. */
export interface EatenMeal {
  /** Whole days before the meal that is checked, by the cook's calendar; 0: the same day. */
  readonly daysAgo: number;
  readonly dishes: readonly Dish[];
}

/** A week is the day itself and the six before it. */
export const DAYS = { day: 1, week: 7 } as const;

/** The meals of a day or a week. */
export const within = (eaten: readonly EatenMeal[], every: keyof typeof DAYS): readonly EatenMeal[] =>
  eaten.filter(({ daysAgo }) => daysAgo >= 0 && daysAgo < DAYS[every]);

/**
 * The dishes of an evening that were cooked, as they were cooked, swaps and all: those of which a step has ended. One
 * that was left out or never begun was not eaten.
 */
export const cookedDishes = ({ meal, tasks, progress }: Session): readonly Dish[] =>
  meal.dishes.filter((dish) =>
    tasks.some((task) => task.dish.id === dish.id && progress.get(task.id)?.state === "done"),
  );
