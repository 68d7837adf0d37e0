import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import type { MealEvent } from "../../core/cook/events.ts";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import { helpers, type Helper } from "../../core/plan/worker.ts";
import { tasksAtPace, type PacesOf } from "../../core/pace/known-paces.ts";
import { timesOf } from "../../core/pace/pace.ts";
import { inBestWays } from "../../core/plan/ways.ts";
import type { CookingMeal, Meal } from "../../core/recipe/model.ts";
import { SHELVES, type PantryContents } from "../../core/recipe/read-pantry.ts";
import { cookingMeal, type Servings } from "../../core/recipe/scale.ts";
import type { MealCard, Pantry } from "../../core/sync/protocol.ts";
import { between, inMinutes, instant } from "../../core/units/quantity.ts";
import { err, type Result } from "../../core/units/result.ts";
import { loadPantry } from "../pantry/load-pantry.ts";

/** The meals that can be cooked and what is wrong with the other files. */
export type Listing = Omit<Pantry, "cooking">;

const asWritten: PacesOf = () => [];

/** Changes with every file that is added, taken away or written. Looking is 1 ms, reading them all 100 ms. */
async function versionOf(folder: string): Promise<string> {
  const shelves = await Promise.all(
    SHELVES.map(async (shelf) => {
      const names = await readdir(join(folder, shelf)).catch(() => []);
      return Promise.all(names.map((name) => fileVersion(join(folder, shelf, name))));
    }),
  );
  return shelves.flat().toSorted().join("\n");
}

async function fileVersion(path: string): Promise<string> {
  const entry = await stat(path).catch(() => null);
  return `${path} ${entry?.mtimeMs ?? 0} ${entry?.size ?? 0}`;
}

/**
 * The recipes as their files say. The files are looked at for every listing, so that a cook who mends a recipe
 * sees it when the page is loaded again; a meal that is being cooked lives in its log and does not change.
 */
export class MealBook {
  readonly #folder: string;
  readonly #lengths = new Map<string, readonly number[]>();
  #contents: PantryContents;
  #version: string;

  private constructor(folder: string, contents: PantryContents, version: string) {
    this.#folder = folder;
    this.#contents = contents;
    this.#version = version;
  }

  /** @param folder has the shelves kitchens/, dishes/ and meals/. Rejects when a shelf cannot be listed */
  static async open(folder: string): Promise<MealBook> {
    const version = await versionOf(folder);
    return new MealBook(folder, await loadPantry(folder), version);
  }

  /** Reads the files again where one has changed, and lists what they hold. @param pacesOf how the cook takes a meal's work */
  async list(pacesOf: PacesOf = asWritten): Promise<Listing> {
    const version = await versionOf(this.#folder);
    if (version !== this.#version) {
      this.#contents = await loadPantry(this.#folder);
      this.#version = version;
    }
    return this.listing(pacesOf);
  }

  /** What was read last. */
  listing(pacesOf: PacesOf = asWritten): Listing {
    const { meals, mistakes } = this.#contents;
    return { meals: meals.flatMap((meal) => this.#card(meal, pacesOf) ?? []), mistakes };
  }

  /** What is wrong with the files. */
  mistakes(): Listing["mistakes"] {
    return this.#contents.mistakes;
  }

  /** When a meal is served, in minutes from midnight as in its file; null: as soon as possible, or no such meal. */
  serveAt(id: string): Meal["serveAt"] {
    return this.#contents.meals.find((one) => one.id === id)?.serveAt ?? null;
  }

  /** The diets that a meal's file names; none where there is no such meal. */
  dietsOf(id: string): Meal["diets"] {
    return this.#contents.meals.find((one) => one.id === id)?.diets ?? [];
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

  #card(meal: Meal, pacesOf: PacesOf): MealCard | null {
    const cooking = cookingMeal(meal, this.#contents.dishes);
    if (!cooking.ok) return null;
    const { id, name, about, serveAt } = meal;
    const dishes = cooking.value.dishes.map((dish) => ({ id: dish.id, name: dish.name, ...dish.yield }));
    const [alone = 0, ...takesWithHelp] = this.#lengthsOf(cooking.value, pacesOf);
    return { id, name, about, dishes, serveAt, takesMinutes: alone, takesWithHelp };
  }

  /** For one cook, two and three. Planning is the slow part of a listing, and most listings find the same meals. */
  #lengthsOf(meal: CookingMeal, pacesOf: PacesOf): readonly number[] {
    const key = JSON.stringify([meal, pacesOf(meal).map(({ of, ...pace }) => [of, timesOf(pace)])]);
    const known =
      this.#lengths.get(key) ??
      Array.from({ length: 1 + helpers.length }, (_, count) =>
        takesMinutes(meal, pacesOf, helpers.slice(0, count)),
      );
    this.#lengths.set(key, known);
    return known;
  }
}

/** From the first step to the table when nothing interrupts, each step done in its best way, in whole minutes. */
export function takesMinutes(
  meal: CookingMeal,
  pacesOf: PacesOf = asWritten,
  helping: readonly Helper[] = [],
): number {
  const at = instant(0);
  const cooked = inBestWays(meal, null, at, tasksAtPace(pacesOf), helping);
  const command = "look ahead";
  const { session } = appendEvents(emptyLog, [
    {
      seq: 1,
      at,
      command,
      happening: { type: "MealBegun", meal: cooked, serveAt: null },
    },
    { seq: 2, at, command, happening: { type: "PaceKnown", paces: pacesOf(cooked) } },
    ...helping.map((helper, index): MealEvent => {
      return { seq: 3 + index, at, command, happening: { type: "HelperCame", helper } };
    }),
  ]);
  return session === null ? 0 : Math.ceil(inMinutes(between(at, runSheetOf(session, at).readyAt)));
}
