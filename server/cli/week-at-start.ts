import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import type { Session } from "../../core/cook/session.ts";
import { cookedDishes } from "../../core/diet/eaten.ts";
import type { House } from "../../core/house/house.ts";
import { ok } from "../../core/units/result.ts";
import { fridgeAtStart, nothingAtStart, type AtStart } from "../../core/week/at-start.ts";
import type { MealBook } from "../kitchen/meal-book.ts";
import type { TableRules } from "../kitchen/table-rules.ts";
import { wallNow } from "../kitchen/wall.ts";
import { withLog } from "./with-log.ts";

/** An evening of the log of a folder; null where it cannot be read: then nobody knows what was in its dishes. */
function eveningOf(folder: string, session: string): Session | null {
  const read = withLog(folder, (store) => {
    const events = store.load(session);
    return ok(events.ok ? appendEvents(emptyLog, events.value).session : null);
  });
  return read.ok ? read.value : null;
}

/**
 * What is in the fridge as the week begins, each dish as it was cooked, with the diets that hold for its meal.
 * @param house null: nothing is known of the fridge
 */
export function weekAtStart(folder: string, house: House | null, book: MealBook, rules: TableRules): AtStart {
  if (house === null) return nothingAtStart;
  return fridgeAtStart(
    house,
    ({ of }) => {
      const evening = of === null ? null : eveningOf(folder, of.session);
      if (of === null || evening === null) return null;
      const dish = cookedDishes(evening).find(({ id }) => id === of.dish);
      const diets = rules.dietsFor(book.dietsOf(evening.meal.id));
      return dish === undefined || !diets.ok ? null : { meal: evening.meal, dish, diets: diets.value };
    },
    wallNow(),
  );
}
