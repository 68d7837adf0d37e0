import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { withChosenSwaps } from "../../core/cook/chosen-swaps.ts";
import type { MealEvent } from "../../core/cook/events.ts";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import type { FoodBook, Holding } from "../../core/diet/food-book.ts";
import type { FoodTable } from "../../core/food/food.ts";
import { hazardCautions, withHazards } from "../../core/keeping/hazards.ts";
import { helpers, type Helper } from "../../core/plan/worker.ts";
import { tasksAtPace, type PacesOf } from "../../core/pace/known-paces.ts";
import { timesOf } from "../../core/pace/pace.ts";
import { inBestWays } from "../../core/plan/ways.ts";
import type { CookingMeal, Meal } from "../../core/recipe/model.ts";
import { SHELVES, type PantryContents } from "../../core/recipe/read-pantry.ts";
import { cookingMeal, type Servings } from "../../core/recipe/scale.ts";
import type { MealRequest } from "../../core/sync/meal-request.ts";
import { cannotTell, dietAnswer } from "../../core/sync/diet-answer.ts";
import type { DietAnswer, MealCard, Pantry } from "../../core/sync/protocol.ts";
import { between, inMinutes, instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { loadPantry } from "../pantry/load-pantry.ts";
import type { Eaten } from "./eaten-book.ts";
import { TableRules } from "./table-rules.ts";

/** The meals that can be cooked and what is wrong with the other files. */
export type Listing = Omit<Pantry, "cooking">;

interface Read {
  readonly contents: PantryContents;
  readonly rules: Result<TableRules, string>;
}

async function readAll(folder: string): Promise<Read> {
  const contents = await loadPantry(folder);
  return { contents, rules: await TableRules.load(folder, contents.foods) };
}

const asWritten: PacesOf = () => [];

/** Changes with every file that is added, taken away or written. Looking is 1 ms, reading them all 100 ms. */
async function versionOf(folder: string): Promise<string> {
  const shelves = await Promise.all(
    [...SHELVES, "diets", "foods"].map(async (shelf) => {
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
  readonly #answers = new Map<string, DietAnswer | null>();
  /** The meals as they are listed, until a file changes. */
  readonly #made = new Map<string, Result<CookingMeal, string>>();
  #contents: PantryContents;
  #rules: Result<TableRules, string>;
  #version: string;

  private constructor(folder: string, version: string, { contents, rules }: Read) {
    this.#folder = folder;
    this.#contents = contents;
    this.#rules = rules;
    this.#version = version;
  }

  /** @param folder has the shelves kitchens/, dishes/ and meals/. Rejects when a shelf cannot be listed */
  static async open(folder: string): Promise<MealBook> {
    const version = await versionOf(folder);
    return new MealBook(folder, version, await readAll(folder));
  }

  /** The table of foods with the labels beside the recipes; null where there is none that can be trusted. */
  foods(): FoodTable | null {
    return this.#contents.foods;
  }

  /**
   * Reads the files again where one has changed, and lists what they hold.
   * @param pacesOf how the cook takes a meal's work
   * @param eaten the meals of the last days
   */
  async list(pacesOf: PacesOf = asWritten, eaten: Eaten = ok([])): Promise<Listing> {
    await this.#look();
    return this.listing(pacesOf, eaten);
  }

  /**
   * Reads the files again where one has changed, and tells what they know of foods and diets.
   * @param eaten the meals of the last days
   * Error: one sentence that says which table cannot be read.
   */
  async foodBook(eaten: Eaten): Promise<Result<FoodBook, string>> {
    await this.#look();
    const rules = this.#rules;
    if (!rules.ok) return rules;
    const holding = (named: Meal["diets"]): Holding => {
      const diets = rules.value.dietsFor(named);
      return diets.ok ? ok(diets.value.map(({ id }) => id)) : diets;
    };
    return ok({
      larder: rules.value.larder,
      diets: rules.value.diets,
      holding: new Map(this.#contents.meals.map(({ id, diets }) => [id, holding(diets)])),
      always: holding([]),
      eaten,
    });
  }

  async #look(): Promise<void> {
    const version = await versionOf(this.#folder);
    if (version !== this.#version) {
      const { contents, rules } = await readAll(this.#folder);
      [this.#contents, this.#rules, this.#version] = [contents, rules, version];
      this.#answers.clear();
      this.#made.clear();
    }
  }

  /** What was read last. */
  listing(pacesOf: PacesOf = asWritten, eaten: Eaten = ok([])): Listing {
    const { meals } = this.#contents;
    return {
      meals: meals.flatMap((meal) => this.#card(meal, pacesOf, eaten) ?? []),
      mistakes: this.mistakes(),
    };
  }

  /** What is wrong with the files. */
  mistakes(): Listing["mistakes"] {
    return [...this.#contents.mistakes, ...(this.#rules.ok ? this.#rules.value.mistakes : [])];
  }

  /** When a meal is served, in minutes from midnight as in its file; null: as soon as possible, or no such meal. */
  serveAt(id: string): Meal["serveAt"] {
    return this.#contents.meals.find((one) => one.id === id)?.serveAt ?? null;
  }

  /** The diets that a meal's file names; none where there is no such meal. */
  dietsOf(id: string): Meal["diets"] {
    return this.#contents.meals.find((one) => one.id === id)?.diets ?? [];
  }

  /** The meal with its dishes scaled, what may stand in for its ingredients, and cautions for what is in them. Error: one sentence that says what there is instead. */
  meal(id: string, servings: Servings): Result<CookingMeal, string> {
    const { meals } = this.#contents;
    const meal = meals.find((one) => one.id === id);
    if (meal !== undefined) {
      // What a page may ask for is without end; what every listing asks for is not.
      if (Object.keys(servings).length > 0) return this.#make(meal, servings);
      const made = this.#made.get(id) ?? this.#make(meal, servings);
      this.#made.set(id, made);
      return made;
    }
    const names = meals.map((one) => one.id).join(", ");
    return err(
      `There is no meal called ${id}. ${names === "" ? "No meal can be cooked." : `There are: ${names}.`}`,
    );
  }

  /** The same with what is to be taken for what, and cautions for that too. Error: one sentence. */
  wanted({ meal, servings, swaps }: MealRequest): Result<CookingMeal, string> {
    const found = this.meal(meal, servings);
    if (!found.ok || swaps.length === 0) return found;
    const swapped = withChosenSwaps(found.value, swaps);
    return swapped.ok ? ok(withHazards(swapped.value, this.foods())) : swapped;
  }

  #make(meal: Meal, servings: Servings): Result<CookingMeal, string> {
    const cooking = cookingMeal(meal, this.#contents.dishes, servings);
    return cooking.ok ? ok(withHazards(this.#withSwaps(meal, cooking.value), this.foods())) : cooking;
  }

  /** Where the diets cannot be read nobody knows what they forbid, so nothing is offered. */
  #withSwaps(meal: Meal, cooking: CookingMeal): CookingMeal {
    const diets = this.#rules.ok ? this.#rules.value.dietsFor(meal.diets) : this.#rules;
    return diets.ok && this.#rules.ok ? this.#rules.value.withSwaps(cooking, diets.value) : cooking;
  }

  /** Every listing asks for it, and most find the same meals and the same days before them. */
  #answerFor(meal: Meal, cooking: CookingMeal, eaten: Eaten): DietAnswer | null {
    const key = JSON.stringify([meal.id, eaten]);
    const known = this.#answers.get(key);
    const answer = known === undefined ? this.#held(meal, cooking, eaten) : known;
    this.#answers.set(key, answer);
    return answer;
  }

  #held(meal: Meal, cooking: CookingMeal, eaten: Eaten): DietAnswer | null {
    const rules = this.#rules;
    const told = (held: TableRules): DietAnswer | null =>
      dietAnswer(held.dietsFor(meal.diets), eaten, (diets, before) => held.check(cooking, diets, before));
    return rules.ok ? told(rules.value) : cannotTell(rules.error);
  }

  #card(meal: Meal, pacesOf: PacesOf, eaten: Eaten): MealCard | null {
    const cooking = cookingMeal(meal, this.#contents.dishes);
    if (!cooking.ok) return null;
    const { id, name, about, serveAt } = meal;
    const dishes = cooking.value.dishes.map((dish) => ({ id: dish.id, name: dish.name, ...dish.yield }));
    const [alone = 0, ...takesWithHelp] = this.#lengthsOf(cooking.value, pacesOf);
    const diet = this.#answerFor(meal, cooking.value, eaten);
    const cautions = hazardCautions(cooking.value, this.foods());
    return { id, name, about, dishes, serveAt, takesMinutes: alone, takesWithHelp, diet, cautions };
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
