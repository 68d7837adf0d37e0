import type { TaskId } from "../plan/model.ts";
import type { Dish } from "../recipe/model.ts";
import type { House } from "../house/house.ts";
import type { Kitchen } from "./model.ts";
import { nameWords } from "./utterance.ts";
import { withNumbers } from "./names.ts";

/** What can be said of a dish or a leftover: its names, and its last word where no other one ends in it. */
function namesIn(house: House): readonly string[] {
  const things = [
    ...(house.made?.dishes ?? []).map(({ name, says }) => [name, ...says]),
    ...[...house.leftovers.values()].map(({ name }) => [name]),
  ];
  const lasts = things.map(([name = ""]) => nameWords(name).at(-1) ?? "");
  const short = lasts.filter((last) => last.length > 2);
  return [...new Set([...things.flat(), ...short].flatMap(withNumbers))].filter((name) => name !== "");
}

// A house stays the same between two deeds: its names are worked out once for each.
const known = new WeakMap<House, readonly string[]>();

/** The names of all that may be left: the dishes of the last meal, and what is in the fridge. */
export function leftNames(house: House): readonly string[] {
  const names = known.get(house) ?? namesIn(house);
  known.set(house, names);
  return names;
}

/** Whether something may be left: a dish of this meal is over, a meal was cooked, or there is something in the fridge. */
export function isSomethingLeft({ log: { session } }: Kitchen, { made, leftovers }: House): boolean {
  if (leftovers.size > 0) return true;
  if (made === null || made.endedAt !== null) return made !== null;
  const isOver = (id: TaskId): boolean =>
    ["done", "skipped"].includes(session?.progress.get(id)?.state ?? "");
  const isDishOver = ({ id }: Dish): boolean =>
    session?.tasks.every((task) => task.dish.id !== id || isOver(task.id)) === true;
  return session?.meal.dishes.some(isDishOver) === true;
}
