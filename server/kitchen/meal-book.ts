import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import type { CookingMeal, Meal } from "../../core/recipe/model.ts";
import type { PantryContents } from "../../core/recipe/read-pantry.ts";
import { cookingMeal, type Servings } from "../../core/recipe/scale.ts";
import type { MealCard, Pantry } from "../../core/sync/protocol.ts";
import { between, inMinutes, instant } from "../../core/units/quantity.ts";
import { err, type Result } from "../../core/units/result.ts";
import { loadPantry } from "../pantry/load-pantry.ts";

/** The meals that can be cooked and what is wrong with the other files. */
export type Listing = Omit<Pantry, "cooking">;

/**
 * The recipes as their files say. The files are read again for every listing, so that a cook who mends a recipe
 * sees it when the page is loaded again; a meal that is being cooked lives in its log and does not change.
 */
export class MealBook {
  readonly #folder: string;
  readonly #lengths = new Map<string, number>();
  #contents: PantryContents;

  private constructor(folder: string, contents: PantryContents) {
    this.#folder = folder;
    this.#contents = contents;
  }

  /** @param folder has the shelves kitchens/, dishes/ and meals/. Rejects when a shelf cannot be listed */
  static async open(folder: string): Promise<MealBook> {
    return new MealBook(folder, await loadPantry(folder));
  }

  /** Reads the files again and lists what they hold. */
  async list(): Promise<Listing> {
    this.#contents = await loadPantry(this.#folder);
    return this.listing();
  }

  /** What was read last. */
  listing(): Listing {
    const { meals, mistakes } = this.#contents;
    return { meals: meals.flatMap((meal) => this.#card(meal) ?? []), mistakes };
  }

  /** The meal with its dishes scaled. Error: one sentence that says what there is instead. */
  meal(id: string, servings: Servings): Result<CookingMeal, string> {
    const { meals, dishes } = this.#contents;
    const meal = meals.find((one) => one.id === id);
    if (meal !== undefined) return cookingMeal(meal, dishes, servings);
    const names = meals.map((one) => one.id).join(", ");
    return err(
      `There is no meal called ${id}. ${names === "" ? "No meal can be cooked." : `There are: ${names}.`}`,
    );
  }

  #card(meal: Meal): MealCard | null {
    const cooking = cookingMeal(meal, this.#contents.dishes);
    if (!cooking.ok) return null;
    const { id, name, about, serveAt } = meal;
    const dishes = cooking.value.dishes.map((dish) => ({ id: dish.id, name: dish.name, ...dish.yield }));
    return { id, name, about, dishes, serveAt, takesMinutes: this.#takesMinutes(cooking.value) };
  }

  /** Planning is the slow part of a listing, and most listings find the same meals. */
  #takesMinutes(meal: CookingMeal): number {
    const key = JSON.stringify(meal);
    const known = this.#lengths.get(key) ?? takesMinutes(meal);
    this.#lengths.set(key, known);
    return known;
  }
}

/** From the first step to the table when nothing interrupts, in whole minutes. */
export function takesMinutes(meal: CookingMeal): number {
  const at = instant(0);
  const happening = { type: "MealBegun", meal, serveAt: null } as const;
  const { session } = appendEvents(emptyLog, [{ seq: 1, at, command: "look ahead", happening }]);
  return session === null ? 0 : Math.ceil(inMinutes(between(at, runSheetOf(session, at).readyAt)));
}
