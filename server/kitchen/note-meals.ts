import type { FoodTable } from "../../core/food/food.ts";
import { madeMeal } from "../../core/house/made-meal.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { MealStore } from "../store/meal-store.ts";
import type { Household } from "./household.ts";
import type { CookedEvening, Kitchen } from "./kitchen.ts";

/** What joins the evenings to the house. */
export interface NotingParts {
  readonly kitchen: Kitchen;
  readonly household: Household;
  readonly store: Pick<MealStore, "past">;
  readonly foods: FoodTable | null;
  /** Is told a sentence when the log cannot be written, once for each new sentence. */
  readonly report: (sentence: string) => void;
}

/** Has the house know what is being cooked and what was: from the beginning of a meal, and beyond its end. */
export function noteMeals({ kitchen, household, store, foods, report }: NotingParts): () => void {
  let last: CookedEvening | null = null;
  let said = "";
  const note = ({ session, state }: CookedEvening, endedAt: Instant | null): void => {
    const noted = household.note(madeMeal(session, state, endedAt, foods));
    const sentence = noted.ok ? "" : noted.sentence;
    if (sentence !== "" && sentence !== said) report(sentence);
    said = sentence;
  };
  const endOf = (session: string): Instant | null => {
    const past = store.past(1);
    const [latest] = past.ok ? past.value : [];
    return latest?.session === session ? latest.endedAt : null;
  };
  const look = (): void => {
    const evening = kitchen.evening();
    if (evening !== null) note(evening, null);
    else if (last !== null) note(last, endOf(last.session));
    last = evening;
  };
  // The server may have stopped between the end of a meal and its note.
  const open = household.house().made;
  if (open !== null && open.endedAt === null && kitchen.cooking()?.session !== open.session) {
    const endedAt = endOf(open.session);
    if (endedAt !== null) household.note({ ...open, endedAt });
  }
  look();
  return kitchen.listen(look);
}
