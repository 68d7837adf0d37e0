import type { Session } from "../cook/session.ts";
import type { CookingMeal } from "../recipe/model.ts";
import { mealId } from "../recipe/model.ts";

const nothing: CookingMeal = {
  id: mealId("nothing"),
  name: "Nothing",
  dishes: [],
  kitchen: { burners: 0, ovens: [], appliances: [] },
};

/** What comes to the table: the meal in hand, swaps and changed amounts and all, without the dishes that are left out. */
export function onTheTable(session: Session | null): CookingMeal {
  if (session === null) return nothing;
  const { meal, tasks, progress } = session;
  const comes = meal.dishes.filter(({ id }) => {
    const own = tasks.filter(({ dish }) => dish.id === id);
    return own.length === 0 || own.some((task) => progress.get(task.id)?.state !== "skipped");
  });
  return { ...meal, dishes: comes };
}
